package org.flitchbook.json;

import java.lang.annotation.ElementType;
import java.lang.annotation.Retention;
import java.lang.annotation.RetentionPolicy;
import java.lang.annotation.Target;

/**
 * On a sealed interface the key whose word chooses between its records; on each of these its words.
 * Without it, a sealed interface is the first of its records whose first key is there.
 */
@Retention(RetentionPolicy.RUNTIME)
@Target(ElementType.TYPE)
public @interface Choice {
  String[] value();
}
