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

  /** The name of the {@link Format} by which it is read, where it is not that of its type. */
  String format() default "";

  /** Of a quantity. */
  Dimension dimension() default Dimension.NUMBER;

  /** The component before this one whose value says what this quantity measures. */
  String of() default "";

  /** The text that stands for the key where it is missing. */
  String otherwise() default NOTHING;

  /** Whether a list or map may be missing, which is then empty. */
  boolean optional() default false;

  /** Whether the key of an {@code Optional} must be there: it is empty only beside a fault. */
  boolean required() default false;

  /** Whether its keys stand in the same object as those of the record. */
  boolean inline() default false;

  /** The least whole number, or the least number of items of a list. */
  int least() default 0;

  /** The key by which no two items of a list may have the same text, nor a blank one. */
  String unique() default "";
}
