package org.flitchbook.pdf;

import com.sun.management.OperatingSystemMXBean;
import java.io.IOException;
import java.lang.management.ManagementFactory;
import java.lang.management.MemoryPoolMXBean;
import java.lang.management.MemoryType;
import java.util.Arrays;
import java.util.Locale;
import org.apache.pdfbox.Loader;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.flitchbook.document.Document;

/**
 * How long a table of some 400 pages takes, and how much memory. No test: it is run by hand, see
 * {@code docs/performance.md}.
 */
final class PrintingSpeed {
  private static final int ROWS = 18_000;
  private static final int RUNS = 12;

  /**
   * The work of all threads, the compiler's and the collector's too: other processes don't count.
   */
  private static final OperatingSystemMXBean MACHINE =
      (OperatingSystemMXBean) ManagementFactory.getOperatingSystemMXBean();

  private PrintingSpeed() {}

  public static void main(String[] words) throws IOException {
    Document document = Pages.document(Pages.table(ROWS));
    int pages = pages(Pages.print(document));
    double[] worked = new double[RUNS];
    for (int i = 0; i < RUNS; i++) {
      long clock = System.nanoTime();
      long work = MACHINE.getProcessCpuTime();
      int bytes = Pages.print(document).length;
      worked[i] = (MACHINE.getProcessCpuTime() - work) / 1e6 / pages;
      double waited = (System.nanoTime() - clock) / 1e6 / pages;
      say(
          "%2d: %d pages, %d bytes; ms a page: %.2f worked, %.2f waited",
          i + 1, pages, bytes, worked[i], waited);
    }
    double[] warm = Arrays.copyOfRange(worked, RUNS / 2, RUNS);
    Arrays.sort(warm);
    say(
        "warm, ms of work a page: %.2f in the middle, %.2f at most",
        warm[RUNS / 4], warm[RUNS / 2 - 1]);
    say(
        "heap at its highest: %d MB; load average %.1f",
        peak() >> 20, MACHINE.getSystemLoadAverage());
  }

  private static int pages(byte[] pdf) throws IOException {
    try (PDDocument file = Loader.loadPDF(pdf)) {
      return file.getNumberOfPages();
    }
  }

  private static long peak() {
    return ManagementFactory.getMemoryPoolMXBeans().stream()
        .filter(pool -> pool.getType() == MemoryType.HEAP)
        .map(MemoryPoolMXBean::getPeakUsage)
        .mapToLong(usage -> usage.getUsed())
        .sum();
  }

  private static void say(String form, Object... values) {
    System.out.println(String.format(Locale.ROOT, form, values));
  }
}
