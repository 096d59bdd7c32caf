package org.flitchbook.cli;

import java.math.BigDecimal;
import java.math.MathContext;
import java.util.ArrayList;
import java.util.List;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/**
 * Works a printed sum as a person with a pocket calculator would, and shares no code with what is
 * tested: ×, /, + and −, parentheses, digits with commas, % as hundredths. Every other word, such
 * as a unit, is passed over.
 */
final class PocketCalculator {

  private static final Pattern KEY = Pattern.compile("\\d[\\d,]*(?:\\.\\d+)?|[×/+−()%]");

  private final List<String> keys = new ArrayList<>();
  private int next;

  private PocketCalculator(String sum) {
    Matcher found = KEY.matcher(sum);
    while (found.find()) {
      keys.add(found.group());
    }
  }

  static BigDecimal work(String sum) {
    PocketCalculator calculator = new PocketCalculator(sum);
    BigDecimal result = calculator.terms();
    if (calculator.next < calculator.keys.size()) {
      throw new IllegalArgumentException(sum + " goes on behind key " + calculator.next);
    }
    return result;
  }

  private boolean press(String key) {
    boolean isNext = next < keys.size() && keys.get(next).equals(key);
    next += isNext ? 1 : 0;
    return isNext;
  }

  private BigDecimal terms() {
    BigDecimal sum = factors();
    while (true) {
      if (press("+")) {
        sum = sum.add(factors());
      } else if (press("−")) {
        sum = sum.subtract(factors());
      } else {
        return sum;
      }
    }
  }

  private BigDecimal factors() {
    BigDecimal product = number();
    while (true) {
      if (press("×")) {
        product = product.multiply(number());
      } else if (press("/")) {
        product = product.divide(number(), MathContext.DECIMAL128);
      } else {
        return product;
      }
    }
  }

  private BigDecimal number() {
    if (press("(")) {
      BigDecimal inner = terms();
      if (!press(")")) {
        throw new IllegalArgumentException(keys + " lacks a closing parenthesis");
      }
      return inner;
    }
    if (next == keys.size()) {
      throw new IllegalArgumentException(keys + " ends too early");
    }
    BigDecimal digits = new BigDecimal(keys.get(next++).replace(",", ""));
    return press("%") ? digits.movePointLeft(2) : digits;
  }
}
