package org.flitchbook.planning;

import java.nio.file.Path;
import java.util.List;
import org.flitchbook.book.BookFolder;
import org.flitchbook.book.PlanVersions;
import org.flitchbook.job.ExitStatus;
import org.flitchbook.job.JobResult;
import org.flitchbook.job.Session;
import org.flitchbook.job.UsageException;
import org.flitchbook.plan.Plan;
import org.flitchbook.plan.Product;

/** Checks a plan: lists the limits of each product, and what they leave open. */
public final class PlanCheck {

  private final StringBuilder text = new StringBuilder();
  private boolean isOpen;

  private PlanCheck() {}

  /**
   * Reads a plan with all that it draws on, and says what its products' classes ask for beyond it.
   *
   * @throws UsageException where there is no plan
   */
  public static JobResult check(Session session, Path where) {
    session.progress("reading");
    PlanVersions versions = PlanVersions.of(BookFolder.read(where));
    return versions
        .now()
        .map(plan -> new PlanCheck().answer(plan))
        .orElseGet(() -> JobResult.broken(versions.faults()));
  }

  private void tell(Product product) {
    text.append(product.code()).append(", ").append(product.name()).append(": ");
    text.append(product.limits().size()).append(" limits\n");
    for (Product.Exempt each : product.exemptions()) {
      text.append("    exempt from ").append(each.exemption().covers()).append(": ");
      text.append(each.exemption().name()).append("; support: ").append(each.support());
      text.append('\n');
    }
    for (Product.Missing each : product.missing()) {
      isOpen = true;
      text.append("    no limit covers ").append(each.covers()).append(". ");
      text.append(each.because()).append(" (").append(each.source().cited()).append(")\n");
    }
    for (String conflict : product.conflicts()) {
      isOpen = true;
      text.append("    limits in conflict: ").append(conflict).append('\n');
    }
  }

  private JobResult answer(Plan plan) {
    plan.products().forEach(this::tell);
    String head = "Plan version " + plan.version();
    String state = isOpen ? " leaves something open.\n" : " can be used.\n";
    ExitStatus status = isOpen ? ExitStatus.AMISS : ExitStatus.WELL;
    return new JobResult(status, head + state + text, "", List.of());
  }
}
