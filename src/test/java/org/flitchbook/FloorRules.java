package org.flitchbook;

import static com.tngtech.archunit.core.domain.JavaClass.Predicates.resideInAPackage;
import static com.tngtech.archunit.lang.syntax.ArchRuleDefinition.classes;
import static com.tngtech.archunit.library.dependencies.SlicesRuleDefinition.slices;

import com.tngtech.archunit.core.domain.Dependency;
import com.tngtech.archunit.core.domain.JavaClass;
import com.tngtech.archunit.lang.ArchCondition;
import com.tngtech.archunit.lang.ArchRule;
import com.tngtech.archunit.lang.ConditionEvents;
import com.tngtech.archunit.lang.SimpleConditionEvent;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.function.BiPredicate;

/**
 * The rules about which package may import which, for any house whose packages carry {@link Floor}.
 *
 * @param root the package that holds the house; what lies outside of it is not judged
 */
record FloorRules(String root) {

  /** Rooms of one floor that may look into each other, as "from -> to". */
  private static final Set<String> NEIGHBOURS = Set.of("doubt -> lot");

  List<ArchRule> all() {
    return List.of(
        everyClassLivesOnAFloor(),
        importsAreDeclared(),
        importsPointDown(),
        declarationsPointDown(),
        noCycles());
  }

  /** Needed beside the others: a package without the annotation is invisible to them. */
  ArchRule everyClassLivesOnAFloor() {
    return classes()
        .that(resideInAPackage(root + ".."))
        .and()
        .resideOutsideOfPackage(root)
        .should(
            new ArchCondition<JavaClass>("live in a package with @Floor") {
              @Override
              public void check(JavaClass type, ConditionEvents events) {
                if (floorOf(type).isEmpty()) {
                  String message = type.getName() + " lives in a package without @Floor";
                  events.add(SimpleConditionEvent.violated(type, message));
                }
              }
            })
        .because("a package without a floor escapes every rule about floors");
  }

  ArchRule importsAreDeclared() {
    return classes()
        .that(resideInAPackage(root + ".."))
        .should(
            importOnly(
                "only import what mayImport of their @Floor names",
                (from, to) -> List.of(from.mayImport()).contains(to.name())))
        .because("the imports of a package are part of its contract");
  }

  ArchRule importsPointDown() {
    return classes()
        .that(resideInAPackage(root + ".."))
        .should(importOnly("only import from lower floors", FloorRules::liesBelow))
        .because("who reads a floor should need to know only the floors below it");
  }

  /** What is allowed must itself be sound: a name that exists, on a lower floor. */
  ArchRule declarationsPointDown() {
    return classes()
        .that(resideInAPackage(root + ".."))
        .and()
        .haveSimpleName("package-info")
        .and()
        .resideOutsideOfPackage(root)
        .should(
            new ArchCondition<JavaClass>("name only lower floors of this house in mayImport") {
              @Override
              public void check(JavaClass info, ConditionEvents events) {
                floorOf(info).ifPresent(floor -> checkDeclared(info, floor, events));
              }
            })
        .because("a permission that nobody can read rightly is no permission");
  }

  ArchRule noCycles() {
    return slices()
        .matching(root + ".(*)..")
        .should()
        .beFreeOfCycles()
        .because("rooms that need each other are one room");
  }

  /** The floor of the package in which a type lives; empty where the package has none. */
  static Optional<Floor> floorOf(JavaClass type) {
    return type.getPackage().tryGetAnnotationOfType(Floor.class);
  }

  private static boolean liesBelow(Floor from, Floor to) {
    return to.floor() < from.floor() || NEIGHBOURS.contains(from.name() + " -> " + to.name());
  }

  private void checkDeclared(JavaClass info, Floor floor, ConditionEvents events) {
    for (String name : floor.mayImport()) {
      boolean sound =
          info.getPackage().getParent().stream()
              .filter(parent -> parent.containsPackage(name))
              .map(parent -> parent.getPackage(name))
              .flatMap(found -> found.tryGetAnnotationOfType(Floor.class).stream())
              .anyMatch(to -> liesBelow(floor, to));
      if (!sound) {
        String message = floor.name() + " names " + name + ", which is not a lower floor";
        events.add(SimpleConditionEvent.violated(info, message));
      }
    }
  }

  private ArchCondition<JavaClass> importOnly(
      String description, BiPredicate<Floor, Floor> allowed) {
    return new ArchCondition<>(description) {
      @Override
      public void check(JavaClass type, ConditionEvents events) {
        for (Dependency dependency : type.getDirectDependenciesFromSelf()) {
          if (crossesRooms(dependency) && !isAllowed(dependency, allowed)) {
            events.add(SimpleConditionEvent.violated(dependency, dependency.getDescription()));
          }
        }
      }
    };
  }

  private boolean crossesRooms(Dependency dependency) {
    JavaClass target = dependency.getTargetClass();
    return resideInAPackage(root + ".*..").test(target)
        && !target.getPackageName().equals(dependency.getOriginClass().getPackageName());
  }

  private static boolean isAllowed(Dependency dependency, BiPredicate<Floor, Floor> allowed) {
    Optional<Floor> from = floorOf(dependency.getOriginClass());
    Optional<Floor> to = floorOf(dependency.getTargetClass());
    return from.isPresent() && to.isPresent() && allowed.test(from.get(), to.get());
  }
}
