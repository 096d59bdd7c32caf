package org.flitchbook.plan;

import static org.flitchbook.message.Message.say;

import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.flitchbook.message.Listing;
import org.flitchbook.message.Message;
import org.flitchbook.message.Word;

/**
 * What the limits of a product cover of the hazards that its class asks for, and what in them
 * covers nothing.
 *
 * @param exempt the hazards that the plan says it does not need to control
 */
record Covering(
    Catalogue catalogue,
    Classes classes,
    List<Classes.ProductClass> asking,
    List<Limit> limits,
    Set<String> exempt) {

  /** The hazards that no limit and no exemption covers. */
  List<Product.Missing> missing() {
    return asking.stream()
        .flatMap(
            each ->
                each.covers().stream()
                    .filter(hazard -> !isCovered(hazard))
                    .map(hazard -> new Product.Missing(hazard, each.because(), each.source())))
        .toList();
  }

  private boolean isCovered(String hazard) {
    return exempt.contains(hazard)
        || limits.stream().map(this::together).anyMatch(group -> isBy(group, hazard));
  }

  /** The limits of which the best verdict counts: one that can't cover would be the best. */
  private List<Limit> together(Limit limit) {
    return limit.group().isEmpty()
        ? List.of(limit)
        : limits.stream().filter(each -> each.group().equals(limit.group())).toList();
  }

  /** One that comes in parts is only met with all of them. */
  private boolean isBy(List<Limit> group, String hazard) {
    Set<String> chosen = limits.stream().map(Limit::id).collect(Collectors.toSet());
    return group.stream().allMatch(limit -> isBy(limit, hazard))
        && group.stream().anyMatch(limit -> catalogue.isWhole(limit.id(), chosen));
  }

  private boolean isBy(Limit limit, String hazard) {
    return limit.covers().equals(hazard)
        && limit.rank() == Rank.CRITICAL
        && classes.coverage(hazard).map(known -> known.isBy(limit)).orElse(true);
  }

  /** What is open in the limits beside the hazards that none covers, a sentence each. */
  List<Message> open() {
    return Stream.of(misnamed(), mixed(), doubted()).flatMap(each -> each).toList();
  }

  /** Limits that say that they cover what a limit of their kind can't. */
  private Stream<Message> misnamed() {
    return limits.stream()
        .filter(limit -> limit.rank() == Rank.CRITICAL)
        .flatMap(
            limit ->
                classes.coverage(limit.covers()).stream()
                    .filter(known -> !known.isBy(limit) && isOwnFault(limit, known))
                    .map(known -> misnamed(limit, known)));
  }

  /**
   * Cold holding of the soak beside that of the cure is as it should be, and so is a rule set's
   * limit of another kind, which is a part of others.
   */
  private boolean isOwnFault(Limit limit, Coverage known) {
    return asking.stream().anyMatch(each -> each.covers().contains(limit.covers()))
        && (!isCovered(limit.covers())
            || (limit.source().standing() == Standing.PLAN && !known.isByKind(limit.kind())));
  }

  private static Message misnamed(Limit limit, Coverage known) {
    return say(
        "planned.covers-nothing",
        "{0} says that it covers {1}, and can't. {2}",
        limit.id(),
        new Word("covers", limit.covers()),
        known.because());
  }

  /** Groups in which a limit would be met by that of another hazard. */
  private Stream<Message> mixed() {
    Map<String, List<Word>> hazards = new LinkedHashMap<>();
    limits.stream()
        .filter(limit -> !limit.group().isEmpty())
        .map(Limit::group)
        .distinct()
        .forEach(group -> hazards.put(group, hazards(group)));
    return hazards.values().stream()
        .filter(each -> each.size() > 1)
        .map(
            each ->
                say(
                    "planned.several-hazards",
                    "anyOf joins limits for {0}; the best verdict of a group counts, so that it"
                        + " may hold limits for one of them only",
                    Listing.and(each)));
  }

  private List<Word> hazards(String group) {
    return limits.stream()
        .filter(limit -> limit.group().equals(group))
        .map(Limit::covers)
        .distinct()
        .map(hazard -> new Word("covers", hazard))
        .toList();
  }

  /** Limits that are never met until the plan confirms them, or the stricter ones. */
  private Stream<Message> doubted() {
    return limits.stream()
        .filter(limit -> together(limit).stream().allMatch(each -> each.doubt().isPresent()))
        .map(
            limit ->
                say(
                    "planned.doubted",
                    "{0} can't be met until the plan confirms it or the stricter {1}, with what"
                        + " supports that, under \"confirms\"",
                    limit.id(),
                    limit.doubt().orElseThrow()));
  }
}
