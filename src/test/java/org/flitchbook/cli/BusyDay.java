package org.flitchbook.cli;

import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Locale;
import java.util.stream.IntStream;

/** A book with one day on which forty lots went into cure, with long names; every third is over. */
final class BusyDay {

  static final int LOTS = 40;

  /** 80 characters. */
  static final String PRODUCT =
      "Juniper, black treacle, cracked pepper & slow birch-smoke dry-cured belly slices";

  /** 40 characters. */
  static final String PERSON = "Wilhelmina Achterberg-Featheringstonehay";

  private BusyDay() {}

  static List<String> lots() {
    return IntStream.rangeClosed(1, LOTS)
        .mapToObj(i -> String.format(Locale.ROOT, "26055-B%02d", i))
        .toList();
  }

  /** Those with too much curing salt. */
  static List<String> over() {
    return IntStream.range(0, LOTS).filter(i -> i % 3 == 0).mapToObj(lots()::get).toList();
  }

  static Path book(Path parent) {
    Path book = Tree.example(parent);
    Tree.edit(book.resolve("plan.json"), "Juniper & treacle belly bacon", PRODUCT);
    Tree.edit(book.resolve("plan.json"), "Maud Achterberg", PERSON);
    StringBuilder cure = new StringBuilder("lot,time,what,item,value,unit,by,instrument,note\n");
    lots().forEach(lot -> lot(cure, lot));
    Path day = book.resolve("2026-02-25");
    Tree.write(
        day,
        () -> {
          Files.createDirectories(day);
          Files.write(day.resolve("cure.csv"), cure.toString().getBytes(StandardCharsets.UTF_8));
        });
    return book;
  }

  private static void lot(StringBuilder cure, String lot) {
    String salt = over().contains(lot) ? "16.2" : "11.5";
    for (String entry :
        List.of(
            "09:05,product,JTB,,,MA,,",
            "09:05,supplier lot,DE-0212,,,MA,,Drovers End Abattoir",
            "09:10,rind,,off,,MA,,",
            "09:12,green weight,,4812,g,MA,S-10,",
            "09:20,curing salt,C1-7741," + salt + ",g,MA,S-01,",
            "09:35,surfaces covered,,all,,MA,,",
            "09:40,into cure,F1,,,MA,,")) {
      cure.append(lot).append(",2026-02-25 ").append(entry).append('\n');
    }
  }
}
