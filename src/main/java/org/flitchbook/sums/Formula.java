package org.flitchbook.sums;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.function.BinaryOperator;
import org.flitchbook.measure.Dimension;
import org.flitchbook.measure.Quantity;
import org.flitchbook.measure.Ratio;
import org.flitchbook.measure.Unit;
import org.flitchbook.message.Argument;
import org.flitchbook.message.Language;

/**
 * A sum with its numbers put in. What is printed and what comes out of it are made of the same
 * terms, so that they can't differ.
 */
public sealed interface Formula extends Argument
    permits Formula.Term, Dose, Formula.Chain, Formula.Scaled {

  /** What is done with the next part. */
  enum Operator {
    PLUS("+", Ratio::plus),
    MINUS("−", Ratio::minus),
    TIMES("×", Ratio::times),
    OVER("/", Ratio::over);

    private final String sign;
    private final BinaryOperator<Ratio> applied;

    Operator(String sign, BinaryOperator<Ratio> applied) {
      this.sign = sign;
      this.applied = applied;
    }

    private boolean isOfProducts() {
      return this == TIMES || this == OVER;
    }
  }

  /** What it comes to, exact, in the first units of the dimensions of its terms. */
  Ratio result();

  /** With its result in a unit of the result's dimension. */
  default Worked as(Unit unit) {
    return new Worked(new Quantity(result().over(Quantity.of(1, unit).inBase()), unit), this);
  }

  static Formula of(Quantity amount) {
    return new Term(amount, "");
  }

  default Formula plus(Formula part) {
    return new Chain(this, List.of(new Link(Operator.PLUS, part)));
  }

  default Formula minus(Formula part) {
    return new Chain(this, List.of(new Link(Operator.MINUS, part)));
  }

  default Formula times(Formula part) {
    return product(new Link(Operator.TIMES, part));
  }

  default Formula over(Formula part) {
    return product(new Link(Operator.OVER, part));
  }

  private Formula product(Link link) {
    if (this instanceof Chain chain && chain.links().get(0).operator().isOfProducts()) {
      List<Link> links = new ArrayList<>(chain.links());
      links.add(link);
      return new Chain(chain.first(), links);
    }
    return new Chain(this, List.of(link));
  }

  /**
   * Several added up; one stays itself.
   *
   * @param parts at least one
   */
  static Formula sum(List<? extends Formula> parts) {
    List<Link> links = parts.stream().skip(1).map(part -> new Link(Operator.PLUS, part)).toList();
    return links.isEmpty() ? parts.get(0) : new Chain(parts.get(0), links);
  }

  /**
   * A number.
   *
   * @param amount no temperature, whose 0 is none
   * @param of a word that tells it from others of its kind, such as {@code rind}; empty where it
   *     needs none
   */
  record Term(Quantity amount, String of) implements Formula {

    public Term {
      if (amount.dimension() == Dimension.TEMPERATURE) {
        throw new IllegalArgumentException(amount + " in a sum");
      }
    }

    @Override
    public Ratio result() {
      return amount.inBase();
    }

    @Override
    public String in(Language language) {
      return of.isEmpty() ? amount.toString() : amount + " " + language.word("sum", of);
    }

    @Override
    public Object json() {
      return of.isEmpty() ? amount.json() : tree("amount", amount.json(), "of", of);
    }
  }

  private static Map<String, Object> tree(String key, Object value, String next, Object other) {
    Map<String, Object> tree = new LinkedHashMap<>();
    tree.put(key, value);
    tree.put(next, other);
    return tree;
  }

  /** An operator and the part that follows it. */
  record Link(Operator operator, Formula part) {}

  /**
   * Parts one after the other, worked from left to right; those of several terms in parentheses.
   */
  record Chain(Formula first, List<Link> links) implements Formula {

    public Chain {
      links = List.copyOf(links);
      boolean products = links.get(0).operator().isOfProducts();
      if (links.stream().anyMatch(link -> link.operator().isOfProducts() != products)) {
        throw new IllegalArgumentException("sums and products in a row");
      }
    }

    @Override
    public Ratio result() {
      Ratio result = first.result();
      for (Link link : links) {
        result = link.operator().applied.apply(result, link.part().result());
      }
      return result;
    }

    @Override
    public String in(Language language) {
      StringBuilder text = new StringBuilder(part(first, language));
      links.forEach(
          link ->
              text.append(" " + link.operator().sign + " ").append(part(link.part(), language)));
      return text.toString();
    }

    private static String part(Formula part, Language language) {
      String text = part.in(language);
      return part instanceof Chain ? "(" + text + ")" : text;
    }

    @Override
    public Object json() {
      List<Object> terms = new ArrayList<>(List.of(first.json()));
      links.forEach(link -> terms.add(link.part().json()));
      List<String> operators = links.stream().map(link -> link.operator().sign).toList();
      return tree("terms", terms, "operators", operators);
    }
  }

  /** A share written in ppm or in %: × 1,000,000, or × 100. */
  record Scaled(Formula share, Unit unit) implements Formula {

    @Override
    public Ratio result() {
      return share.result();
    }

    @Override
    public String in(Language language) {
      long parts = Quantity.of(100, Unit.PERCENT).in(unit).value().floor().longValueExact();
      return share.in(language) + " × " + String.format(Locale.ROOT, "%,d", parts);
    }

    @Override
    public Object json() {
      return tree("share", share.json(), "unit", unit.json());
    }
  }
}
