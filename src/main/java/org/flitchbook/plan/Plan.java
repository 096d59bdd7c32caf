package org.flitchbook.plan;

import java.time.LocalDate;
import java.util.List;
import java.util.Optional;
import org.flitchbook.input.Place;
import org.flitchbook.practice.Practice;
import org.flitchbook.words.Words;

/**
 * The HACCP plan in force.
 *
 * @param place where it stands, for a diagnostic
 * @param sha256 of the file as read
 * @param retention how long records are kept; empty where no rule of the regime is known
 * @param ownTemplates the files of the book's own templates that won over the tool's
 * @param words the fixed wording of what is printed, in the language of the plan
 * @param practice the numbers that decide beside the limits
 */
public record Plan(
    Place place,
    String sha256,
    String version,
    LocalDate signed,
    String signedBy,
    LocalDate reassessBy,
    Optional<Retention> retention,
    Establishment establishment,
    List<Person> people,
    List<Instrument> instruments,
    List<Location> locations,
    List<Ingredient> ingredients,
    List<Product> products,
    List<RuleSet> ruleSets,
    List<String> ownTemplates,
    Words words,
    Practice practice) {

  public Optional<Product> product(String code) {
    return products.stream().filter(each -> each.code().equals(code)).findFirst();
  }

  public Optional<Person> person(String initials) {
    return people.stream().filter(each -> each.initials().equals(initials)).findFirst();
  }

  public Optional<Instrument> instrument(String id) {
    return instruments.stream().filter(each -> each.id().equals(id)).findFirst();
  }

  public Optional<Location> location(String id) {
    return locations.stream().filter(each -> each.id().equals(id)).findFirst();
  }

  public Optional<Ingredient> ingredient(String lot) {
    return ingredients.stream().filter(each -> each.lot().equals(lot)).findFirst();
  }

  /** Limits of the rule sets for a hazard control that fit a product and that it does not use. */
  public List<Limit> unused(Product product, String covers) {
    List<String> used = product.limits().stream().map(Limit::id).toList();
    return ruleSets.stream()
        .flatMap(set -> set.limits().values().stream())
        .filter(limit -> limit.covers().equals(covers) && !used.contains(limit.id()))
        .filter(
            limit -> limit.when().fit(product.cureMethod(), product.cut(), product.productClass()))
        .toList();
  }

  /** A source's document by its short name where it has one, and the clause. */
  public String cited(Source source) {
    String document =
        ruleSets.stream()
            .flatMap(set -> Optional.ofNullable(set.shortNames().get(source.document())).stream())
            .findFirst()
            .orElse(source.document());
    return source.cited(document);
  }
}
