package org.flitchbook.plan;

import static org.flitchbook.message.Message.say;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;
import org.flitchbook.input.SourceFile;
import org.flitchbook.json.Binder;
import org.flitchbook.json.Fields;
import org.flitchbook.message.Listing;
import org.flitchbook.message.Message;
import org.flitchbook.practice.Practice;
import org.flitchbook.words.Words;

/**
 * Makes a plan of what its file says, with the templates that it draws on.
 *
 * @param own the names of the templates that are the book's own
 * @param former the language of the plan of today, where this is one that it replaced
 */
record PlanReader(
    SourceFile file, List<SourceFile> templates, List<String> own, Optional<Words> former) {

  PlanRead read() {
    Binder.Bound<PlanFile> bound = PlanFormats.BINDER.read(file, PlanFile.class);
    Optional<Plan> plan = bound.value().flatMap(this::plan);
    return new PlanRead(bound.faults().isEmpty() ? plan : Optional.empty(), bound.faults());
  }

  private Optional<Plan> plan(PlanFile written) {
    Words words = former.orElseGet(() -> words(written));
    Catalogue catalogue = new Catalogue(ruleSets(written));
    Classes classes = written.with(Classes.read(templates)).orElse(Classes.NONE);
    Optional<Practice> practice = practice(written);
    String version = written.head().map(PlanFile.Head::version).orElse("");
    String edition = words.say("planned.edition", "plan version {0}", version);
    written.establishment().ifPresent(house -> checkRegime(house, classes));
    String regime = written.establishment().map(h -> h.establishment().regime()).orElse("");
    Optional<Retention> retention =
        written.head().flatMap(head -> classes.retention(regime, head, edition));
    Set<String> confirmed = written.head().map(head -> confirmed(head, catalogue)).orElse(Set.of());
    ProductReader reader = new ProductReader(catalogue, classes, regime, edition, confirmed);
    List<Person> people = written.people().all();
    List<Product> products = written.products().stream().map(reader::read).toList();
    if (written.establishment().isEmpty() || written.head().isEmpty() || practice.isEmpty()) {
      return Optional.empty();
    }
    PlanFile.Head head = written.head().get();
    return Optional.of(
        new Plan(
            written.object().place(),
            file.sha256(),
            version,
            head.signed(),
            head.signedBy(),
            head.reassessBy(),
            retention,
            written.establishment().get().establishment(),
            people,
            written.instruments().stream().map(PlanFile.Device::instrument).toList(),
            written.places(),
            written.ingredients().stream().map(PlanFile.Labelled::ingredient).toList(),
            products,
            catalogue.ruleSets(),
            own,
            words,
            practice.get()));
  }

  /** The numbers of common practice, which the shares of the ingredients are held to. */
  private Optional<Practice> practice(PlanFile written) {
    Optional<Practice> practice = written.with(Practice.read(templates));
    practice.ifPresent(
        numbers ->
            written.ingredients().stream()
                .filter(each -> each.object().isSound())
                .forEach(each -> each.check(numbers.cureShares())));
    return practice;
  }

  /** The plan's language; one that there is no wording of is a fault. */
  private Words words(PlanFile written) {
    List<SourceFile> ofBook = templates.stream().filter(each -> own.contains(each.name())).toList();
    List<String> languages = Words.languages(ofBook);
    String language = written.establishment().map(PlanFile.House::language).orElse(Words.DEFAULT);
    Words.Chosen chosen = Words.of(language, ofBook);
    written.object().faults().addAll(chosen.faults());
    if (!languages.contains(language)) {
      Message expected = say("json.one-of", "one of {0}", Listing.commas(languages));
      refuse(written.establishment().orElseThrow().object(), "language", language, expected);
    }
    return chosen.words();
  }

  private static void refuse(Fields object, String key, String found, Message expected) {
    object.fault(key, say("json.text", "\"{0}\"", found), expected);
  }

  private static void checkRegime(PlanFile.House house, Classes classes) {
    String regime = house.establishment().regime();
    if (!classes.regimes().isEmpty() && !classes.regimes().contains(regime)) {
      refuse(house.object(), "regime", regime, Message.of(Listing.semicolons(classes.regimes())));
    }
  }

  private static Set<String> confirmed(PlanFile.Head head, Catalogue catalogue) {
    head.confirms().forEach(each -> catalogue.find(each.object(), "limit", each.limit()));
    return head.confirms().stream().map(PlanFile.Confirmation::limit).collect(Collectors.toSet());
  }

  private List<RuleSet> ruleSets(PlanFile written) {
    List<RuleSet> ruleSets = new ArrayList<>();
    for (String name : written.ruleSets()) {
      String path = RuleSet.FOLDER + name + ".json";
      Optional<SourceFile> found =
          templates.stream().filter(each -> each.name().equals(path)).findFirst();
      if (found.isEmpty()) {
        Message expected = say("json.one-of", "one of {0}", Listing.commas(ruleSetNames()));
        refuse(written.object(), "ruleSets", name, expected);
      }
      found.flatMap(set -> written.with(RuleSet.read(set))).ifPresent(ruleSets::add);
    }
    return ruleSets;
  }

  private List<String> ruleSetNames() {
    return templates.stream()
        .map(SourceFile::name)
        .filter(name -> name.startsWith(RuleSet.FOLDER) && name.endsWith(".json"))
        .map(name -> name.substring(RuleSet.FOLDER.length(), name.length() - ".json".length()))
        .sorted()
        .toList();
  }
}
