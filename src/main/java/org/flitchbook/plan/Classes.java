package org.flitchbook.plan;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.flitchbook.input.Fault;
import org.flitchbook.input.SourceFile;
import org.flitchbook.json.Fields;
import org.flitchbook.json.Json;
import org.flitchbook.json.Parsed;

/**
 * What a plan must cover for each product class and regime, and the words by which facts are told.
 */
record Classes(
    List<ProductClass> classes,
    List<CureMethod> cureMethods,
    List<String> cuts,
    List<RetentionRule> retention) {

  static final Classes NONE = new Classes(List.of(), List.of(), List.of(), List.of());

  record ProductClass(
      String name, List<String> regimes, List<String> covers, String because, Source source) {}

  Optional<ProductClass> find(String name, String regime) {
    return classes.stream()
        .filter(each -> each.name().equals(name) && each.regimes().contains(regime))
        .findFirst();
  }

  /** How long records are kept under a regime. */
  Optional<RetentionRule> retention(String regime) {
    return retention.stream().filter(each -> each.regimes().contains(regime)).findFirst();
  }

  List<String> names() {
    return classes.stream().map(ProductClass::name).distinct().toList();
  }

  List<String> regimes() {
    return classes.stream().flatMap(each -> each.regimes().stream()).distinct().toList();
  }

  static Classes read(SourceFile file, List<Fault> faults) {
    Parsed parsed = Json.read(file.name(), file.bytes());
    faults.addAll(parsed.faults());
    return parsed.object().map(object -> read(Fields.of(object, faults))).orElse(NONE);
  }

  private static Classes read(Fields file) {
    Formats.check(file);
    file.text("title");
    file.text("made");
    file.optionalText("by");
    List<ProductClass> classes = new ArrayList<>();
    for (Fields each : Lists.objects(file, "classes")) {
      productClass(each).ifPresent(classes::add);
      each.end();
    }
    Optional<Fields> facts = file.object("facts");
    List<CureMethod> methods =
        facts
            .map(fields -> CureMethod.all(fields, Lists.texts(fields, "cureMethod")))
            .orElse(List.of());
    List<String> cuts = facts.map(fields -> Lists.texts(fields, "cut")).orElse(List.of());
    facts.ifPresent(
        fields -> {
          Lists.texts(fields, "rind");
          fields.end();
        });
    List<RetentionRule> retention = new ArrayList<>();
    for (Fields each : Lists.objects(file, "retention")) {
      RetentionRule.read(each).ifPresent(retention::add);
      each.end();
    }
    file.end();
    return new Classes(classes, methods, cuts, retention);
  }

  private static Optional<ProductClass> productClass(Fields fields) {
    String name = fields.text("class");
    List<String> regimes = Lists.texts(fields, "regimes");
    List<String> covers = Lists.texts(fields, "covers");
    String because = fields.text("because");
    return fields
        .object("source")
        .flatMap(LimitReader::source)
        .map(source -> new ProductClass(name, regimes, covers, because, source));
  }
}
