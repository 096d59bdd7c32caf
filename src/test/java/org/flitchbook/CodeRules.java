package org.flitchbook;

import static com.tngtech.archunit.core.domain.JavaClass.Predicates.resideInAPackage;
import static com.tngtech.archunit.core.domain.JavaClass.Predicates.resideInAnyPackage;
import static com.tngtech.archunit.lang.syntax.ArchRuleDefinition.classes;
import static com.tngtech.archunit.lang.syntax.ArchRuleDefinition.fields;
import static com.tngtech.archunit.lang.syntax.ArchRuleDefinition.noClasses;

import com.tngtech.archunit.core.domain.JavaAccess;
import com.tngtech.archunit.core.domain.JavaClass;
import com.tngtech.archunit.core.domain.JavaField;
import com.tngtech.archunit.core.domain.JavaModifier;
import com.tngtech.archunit.lang.ArchCondition;
import com.tngtech.archunit.lang.ArchRule;
import com.tngtech.archunit.lang.ConditionEvents;
import com.tngtech.archunit.lang.SimpleConditionEvent;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.function.Function;
import java.util.function.Predicate;
import java.util.stream.Stream;

/**
 * The rules about what may stand inside a package, for any house whose packages carry {@link
 * Floor}.
 *
 * @param root the package that holds the house; what lies outside of it is not judged
 * @param emptyRooms whether a package may still be without classes
 */
record CodeRules(String root, boolean emptyRooms) {

  private static final List<String> EXACT =
      List.of("measure", "sums", "lot", "doubt", "plan", "reading", "check", "account");

  private static final List<String> WITHOUT_INPUT_OR_OUTPUT =
      List.of(
          "measure",
          "sums",
          "document",
          "plan",
          "reading",
          "lot",
          "doubt",
          "check",
          "account",
          "ledger");

  private static final Map<String, List<String>> LIBRARIES =
      Map.of(
          "org.apache.commons.csv..", List.of("table"),
          "com.fasterxml.jackson..", List.of("json"),
          "com.google.zxing..", List.of("qrcode"),
          "org.apache.pdfbox..", List.of("pdf", "seal"),
          "org.bouncycastle..", List.of("sign"),
          "picocli..", List.of("cli"));

  private static final String EMPTY_NAMES = ".*(Util|Utils|Manager|Helper|Impl|Processor|Handler)";

  private static final String[] EMPTY_PACKAGES = {
    "..util..", "..utils..", "..common..", "..helper..", "..helpers..", "..internal..", "..impl.."
  };

  /** What a program takes from its surroundings, as owner and member. */
  private static final Set<String> SURROUNDINGS =
      Set.of(
          "java.lang.System.currentTimeMillis",
          "java.lang.System.nanoTime",
          "java.lang.System.in",
          "java.lang.System.out",
          "java.lang.System.err",
          "java.lang.System.exit",
          "java.lang.System.getenv",
          "java.lang.System.getProperty",
          "java.lang.System.lineSeparator",
          "java.lang.Math.random",
          "java.nio.charset.Charset.defaultCharset",
          "java.time.Clock.system",
          "java.time.Clock.systemDefaultZone",
          "java.time.Clock.systemUTC",
          "java.time.ZoneId.systemDefault",
          "java.util.Locale.getDefault",
          "java.util.TimeZone.getDefault",
          "java.util.Calendar.getInstance",
          "java.util.UUID.randomUUID");

  private static final Set<String> FLOATING =
      Set.of("double", "float", "java.lang.Double", "java.lang.Float");

  List<ArchRule> all() {
    Stream<ArchRule> own =
        Stream.of(
            onlyTheDoorIsPublic(),
            everyRoomHasItsDoor(),
            namesSayWhatAThingIs(),
            packagesSayWhatTheyAreFor(),
            noFloatingPointFields(),
            surroundingsComeInThroughTheCli(),
            noInputOrOutput());
    return Stream.concat(own, LIBRARIES.keySet().stream().sorted().map(this::oneHome)).toList();
  }

  /** Values (records, enums), interfaces, annotations and exceptions may be public beside it. */
  ArchRule onlyTheDoorIsPublic() {
    return classes()
        .that(resideInAPackage(root + ".*.."))
        .and()
        .arePublic()
        .and()
        .areTopLevelClasses()
        .and()
        .areNotRecords()
        .and()
        .areNotEnums()
        .and()
        .areNotInterfaces()
        .and()
        .areNotAssignableTo(Throwable.class)
        .should(
            condition(
                "be the door of their package",
                CodeRules::isDoor,
                type -> type.getName() + " is public and not the door of its package"))
        .because("a package is used through one class and is free behind it")
        .allowEmptyShould(emptyRooms);
  }

  ArchRule everyRoomHasItsDoor() {
    return classes()
        .that(resideInAPackage(root + ".*.."))
        .and()
        .haveSimpleName("package-info")
        .should(
            condition(
                "have the door that their @Floor names",
                this::hasDoor,
                info -> info.getPackageName() + " has no public class of the name of its door"))
        .because("a contract that names a missing door is wrong");
  }

  ArchRule namesSayWhatAThingIs() {
    return noClasses()
        .that(resideInAPackage(root + ".."))
        .should()
        .haveNameMatching(EMPTY_NAMES)
        .because("such a name says nothing; the work belongs to the value that it serves");
  }

  ArchRule packagesSayWhatTheyAreFor() {
    return noClasses()
        .that(resideInAPackage(root + ".."))
        .should()
        .resideInAnyPackage(EMPTY_PACKAGES)
        .because("a package is named for what it can do");
  }

  ArchRule noFloatingPointFields() {
    return fields()
        .that()
        .areDeclaredInClassesThat(resideInAnyPackage(rooms(EXACT)))
        .should(notBeFloating())
        .because("a measured value is a decimal with a unit; binary fractions shift limits")
        .allowEmptyShould(emptyRooms);
  }

  ArchRule surroundingsComeInThroughTheCli() {
    return classes()
        .that(resideInAPackage(root + ".."))
        .and()
        .resideOutsideOfPackage(root + ".cli..")
        .should(notReachOut())
        .because("clock, zone, locale, charset, chance and streams are handed in from outside");
  }

  ArchRule noInputOrOutput() {
    return noClasses()
        .that(resideInAnyPackage(rooms(WITHOUT_INPUT_OR_OUTPUT)))
        .should()
        .dependOnClassesThat()
        .resideInAnyPackage("java.io..", "java.nio.file..", "java.net..")
        .because("what judges must give the same answer wherever its bytes came from");
  }

  ArchRule oneHome(String library) {
    List<String> homes = LIBRARIES.get(library);
    return noClasses()
        .that(resideInAPackage(root + ".."))
        .and()
        .resideOutsideOfPackages(rooms(homes))
        .should()
        .dependOnClassesThat()
        .resideInAPackage(library)
        .because("the home of " + library + " is " + homes + ", so that it can be replaced there");
  }

  private String[] rooms(List<String> names) {
    return names.stream().map(name -> root + "." + name + "..").toArray(String[]::new);
  }

  private static boolean isDoor(JavaClass type) {
    return FloorRules.floorOf(type).stream()
        .anyMatch(floor -> floor.door().equals(type.getSimpleName()));
  }

  private boolean hasDoor(JavaClass info) {
    Set<JavaClass> inside = info.getPackage().getClasses();
    boolean empty = inside.stream().allMatch(type -> type.equals(info));
    return inside.stream().anyMatch(CodeRules::isPublicDoor) || (empty && emptyRooms);
  }

  private static boolean isPublicDoor(JavaClass type) {
    return type.getModifiers().contains(JavaModifier.PUBLIC) && isDoor(type);
  }

  private static ArchCondition<JavaField> notBeFloating() {
    return condition(
        "not be double or float",
        field -> field.getAllInvolvedRawTypes().stream().noneMatch(CodeRules::isFloating),
        field -> field.getFullName() + " is a binary fraction");
  }

  private static boolean isFloating(JavaClass type) {
    return FLOATING.contains(type.getBaseComponentType().getName());
  }

  private static ArchCondition<JavaClass> notReachOut() {
    return new ArchCondition<>("not reach for the surroundings themselves") {
      @Override
      public void check(JavaClass type, ConditionEvents events) {
        type.getAccessesFromSelf().stream()
            .filter(CodeRules::reachesOut)
            .map(access -> SimpleConditionEvent.violated(access, access.getDescription()))
            .forEach(events::add);
      }
    };
  }

  private static boolean reachesOut(JavaAccess<?> access) {
    JavaClass owner = access.getTargetOwner();
    String name = access.getTarget().getName();
    return SURROUNDINGS.contains(owner.getName() + "." + name)
        || (owner.getPackageName().startsWith("java.time")
            && name.equals("now")
            && !access.getTarget().getFullName().contains("java.time.Clock"))
        || access.getTarget().getFullName().equals("java.util.Date.<init>()")
        || access.getTarget().getFullName().equals("java.util.Random.<init>()");
  }

  private static <T> ArchCondition<T> condition(
      String description, Predicate<T> holds, Function<T, String> found) {
    return new ArchCondition<>(description) {
      @Override
      public void check(T item, ConditionEvents events) {
        if (!holds.test(item)) {
          events.add(SimpleConditionEvent.violated(item, found.apply(item)));
        }
      }
    };
  }
}
