package org.flitchbook;

import com.tngtech.archunit.core.domain.JavaClasses;
import com.tngtech.archunit.core.importer.ClassFileImporter;
import com.tngtech.archunit.lang.ArchRule;
import java.util.List;
import java.util.stream.Stream;
import org.junit.jupiter.api.DynamicTest;
import org.junit.jupiter.api.TestFactory;

/** Holds the classes of the program, without those of the tests, to the rules of the house. */
final class HouseTest {

  /** While rooms wait for their first class; with false, an empty room is a fault. */
  private static final boolean EMPTY_ROOMS = false;

  private static final String ROOT = HouseTest.class.getPackageName();

  private static final JavaClasses CLASSES =
      new ClassFileImporter()
          .importUrl(Floor.class.getProtectionDomain().getCodeSource().getLocation());

  @TestFactory
  Stream<DynamicTest> the_floors_hold() {
    return tests(new FloorRules(ROOT).all());
  }

  @TestFactory
  Stream<DynamicTest> the_rooms_are_in_order() {
    return tests(new CodeRules(ROOT, EMPTY_ROOMS).all());
  }

  private static Stream<DynamicTest> tests(List<ArchRule> rules) {
    return rules.stream()
        .map(rule -> DynamicTest.dynamicTest(rule.getDescription(), () -> rule.check(CLASSES)));
  }
}
