package org.flitchbook.json;

import java.lang.annotation.ElementType;
import java.lang.annotation.Retention;
import java.lang.annotation.RetentionPolicy;
import java.lang.annotation.Target;
import org.flitchbook.measure.Dimension;

/** What a {@link Binder} has to know of a component of a record beside its name and its type. */
@Retention(RetentionPolicy.RUNTIME)
@Target(ElementType.RECORD_COMPONENT)
public @interface Key {

  /** What stands in {@link #otherwise} where nothing does. */
  String NOTHING = "\0";

  /** The key, where it is not the component's name. */
  String name() default "";

  /**
   * Another key under which the same may stand instead. A boolean that has one says whether the
   * value of the component after it stands under the first, or under neither.
   */
  String or() default "";

  /** The name of the {@link Format} by which it is read, where it is not that of its type. */
  String format() default "";

  /** Of a quantity. */
  Dimension dimension() default Dimension.NUMBER;

  /** The component before this one whose value says what this quantity measures. */
  String of() default "";

  /** The text that stands for the key where it is missing. */
  String otherwise() default NOTHING;

  /** Whether a list, map, boolean or whole number may be missing: then empty, false or 0. */
  boolean optional() default false;

  /** Whether the key of an {@code Optional} must be there: it is empty only beside a fault. */
  boolean required() default false;

  /** Whether its keys stand in the same object as those of the record. */
  boolean inline() default false;

  /** Whether the user of a component {@code Fields} has more to ask of it, and ends it. */
  boolean open() default false;

  /** The least whole number, or the least number of items of a list. */
  int least() default 0;

  /** The most that a whole number may be. */
  int most() default Integer.MAX_VALUE;

  /** Whether a list of one item may be written as the item alone. */
  boolean alone() default false;

  /** The key by which no two items of a list may have the same text, nor a blank one. */
  String unique() default "";
}
