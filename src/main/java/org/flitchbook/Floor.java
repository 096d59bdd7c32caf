package org.flitchbook;

import java.lang.annotation.ElementType;
import java.lang.annotation.Retention;
import java.lang.annotation.RetentionPolicy;
import java.lang.annotation.Target;

/**
 * States the place of a package in the house. Stands in its {@code package-info.java}, is held by
 * {@code HouseTest}, and has no effect while the program runs.
 *
 * <p>Class retention, because with source retention {@code package-info.class} is not written and
 * the test would see no package at all.
 */
@Retention(RetentionPolicy.CLASS)
@Target(ElementType.PACKAGE)
public @interface Floor {

  /** The last part of the package's name, by which others list it in {@link #mayImport()}. */
  String name();

  /** The number of the floor, from 0 at the bottom; an import may only point to a lower one. */
  int floor();

  /** The names of all packages of the house that this one may import. */
  String[] mayImport();

  /** The simple name of the one public class through which this package is used. */
  String door();
}
