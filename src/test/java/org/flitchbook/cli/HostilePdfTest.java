package org.flitchbook.cli;

import static java.nio.charset.StandardCharsets.ISO_8859_1;
import static org.flitchbook.cli.HostilePdf.ofPage;
import static org.flitchbook.cli.HostilePdf.page;
import static org.flitchbook.cli.HostilePdf.zeros;
import static org.junit.jupiter.api.Assertions.assertAll;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.stream.Stream;
import org.flitchbook.input.SourceFile;
import org.junit.jupiter.api.DynamicTest;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.TestFactory;
import org.junit.jupiter.api.io.TempDir;

/** Files made to hurt whoever proves them: each is refused, soon and in little memory. */
@Tag("machines")
final class HostilePdfTest {

  private static final String FLATE = "/Filter /FlateDecode";

  @TempDir private Path folder;

  private record Case(String name, SourceFile pdf, String said) {

    Case(String name, byte[] pdf, String said) {
      this(name, SourceFile.of(name, pdf), said);
    }
  }

  private void prove(Case each) throws Exception {
    Path file = folder.resolve("record.pdf");
    Files.write(file, each.pdf.bytes());
    Ran ran = Child.small("prove", file);
    assertAll(
        () -> assertTrue(ran.status() == 1 || ran.status() == 3, ran::out),
        () -> assertTrue(ran.out().contains("record.pdf: found "), ran::out),
        () -> assertTrue(ran.out().replaceAll("\\s+", " ").contains(each.said), ran::out),
        () -> assertFalse(ran.out().contains("memory"), ran::out),
        () -> assertFalse(ran.out().contains("\tat "), ran::out));
  }

  private static byte[] formsInForms() {
    String draw = "/F Do ".repeat(10);
    HostilePdf pdf =
        new HostilePdf("")
                .add("<< /Type /Pages /Kids [3 0 R] /Count 1 >>")
                .add(page("4 0 R", "/XObject << /F 5 0 R >>"))
                .stream(draw);
    for (int next = 6; next < 20; next++) {
      String resources = "/Resources << /XObject << /F " + next + " 0 R >> >>";
      pdf.stream(
          "/Type /XObject /Subtype /Form /BBox [0 0 1 1] " + resources, draw.getBytes(ISO_8859_1));
    }
    return pdf.stream("/Type /XObject /Subtype /Form /BBox [0 0 1 1]", new byte[0]).bytes();
  }

  private static byte[] manyPages(int count) {
    return new HostilePdf("")
            .add("<< /Type /Pages /Kids [" + "3 0 R ".repeat(count) + "] /Count " + count + " >>")
            .add(page("4 0 R", ""))
            .stream("")
            .bytes();
  }

  @TestFactory
  Stream<DynamicTest> a_file_made_to_hurt_is_refused() {
    String page = "<< /Type /Pages /Kids [3 0 R] /Count 1 >>";
    return Stream.of(
            new Case(
                "a page of 3 GB in 3 MB",
                ofPage().stream(FLATE, zeros(3_000)).bytes(),
                "unpacks to more than 16 MB"),
            new Case(
                "many pages' worth of one stream",
                new HostilePdf("")
                    .add(page).add(page("[" + "4 0 R ".repeat(10_000) + "]", "")).stream(
                            FLATE, zeros(1))
                        .bytes(),
                "a page of more than 16 MB"),
            new Case(
                "many streams",
                Stream.iterate(ofPage(), pdf -> pdf.stream(FLATE, zeros(15)))
                    .skip(60)
                    .findFirst()
                    .orElseThrow()
                    .bytes(),
                "more than 512 MB"),
            new Case(
                "packed twice",
                ofPage().stream("/Filter [/FlateDecode /FlateDecode]", zeros(1)).bytes(),
                "which no record has"),
            new Case(
                "packed otherwise",
                ofPage().stream("/Filter /LZWDecode", zeros(1)).bytes(),
                "which no record has"),
            new Case(
                "a row of 2 GB",
                ofPage().stream(
                        FLATE + " /DecodeParms << /Predictor 12 /Columns 2000000000 >>", zeros(1))
                    .bytes(),
                "which no record has"),
            new Case(
                "objects in a stream",
                ofPage().stream("/Type /ObjStm /N 9 /First 0 " + FLATE, zeros(3_000)).bytes(),
                "unpacks to more than 4 MB"),
            new Case(
                "a stream of places",
                ofPage().stream("/W [1 1 1] /Size 999 " + FLATE, zeros(3_000)).bytes(),
                "unpacks to more than 1 MB"),
            new Case("100,000 pages", manyPages(100_000), "more than 5000 pages"),
            new Case(
                "pages in a circle",
                new HostilePdf("").add("<< /Type /Pages /Kids [2 0 R 2 0 R] /Count 2 >>").bytes(),
                "record.pdf"),
            new Case("forms in forms", formsInForms(), "record.pdf"),
            new Case(
                "a text of 15 MB",
                ofPage().stream("").add("(" + "x".repeat(15_000_000) + ")").bytes("/Info 5 0 R"),
                "a text of more than 256 kB"),
            new Case(
                "lists in lists",
                ofPage().stream("").add("[".repeat(2_000_000) + "]".repeat(2_000_000)).bytes(),
                "record.pdf"),
            new Case(
                "fields in a circle",
                new HostilePdf("/AcroForm << /Fields [3 0 R] >>")
                    .add("<< /Type /Pages /Kids [] /Count 0 >>")
                    .add("<< /T (a) /Parent 4 0 R >>")
                    .add("<< /T (b) /Parent 3 0 R /Kids [3 0 R] >>")
                    .bytes(),
                "record.pdf"),
            new Case(
                "a structure in a circle",
                new HostilePdf("/StructTreeRoot 4 0 R")
                    .add("<< /Type /Pages /Kids [] /Count 0 >>")
                    .add("<< /S /P /P 4 0 R /K 4 0 R >>")
                    .add("<< /Type /StructTreeRoot /K 3 0 R >>")
                    .bytes(),
                "record.pdf"),
            new Case(
                "names in a circle",
                new HostilePdf("/Names << /EmbeddedFiles 3 0 R >>")
                    .add("<< /Type /Pages /Kids [] /Count 0 >>")
                    .add("<< /Kids [3 0 R 3 0 R] >>")
                    .bytes(),
                "a tree of attachments that is too deep"),
            new Case("no PDF", "%PDF-1.7\n".repeat(300_000).getBytes(ISO_8859_1), "record.pdf"))
        .map(each -> DynamicTest.dynamicTest(each.name, () -> prove(each)));
  }

  @Test
  void a_number_without_end_in_the_findings_is_another_finding() throws Exception {
    Path book = Tree.closedExample(folder);
    byte[] pdf = Tree.bytes(book.resolve(Smokeyard.RECORD));
    for (String number : List.of("1e900000000", "-1e900000000", "1e-900000000")) {
      Path file = folder.resolve("record.pdf");
      Files.write(
          file,
          Forger.rewritten(pdf, Forger.swapping("findings/26047-B1.json", "149.366168", number)));
      Ran ran = Child.small("prove", file).expect(1);
      assertTrue(
          ran.out()
              .contains(
                  "E" + number.substring(number.indexOf('e') + 1).replaceFirst("^(?=9)", "+")),
          ran::out);
      assertFalse(ran.out().contains("\tat "), ran::out);
    }
  }
}
