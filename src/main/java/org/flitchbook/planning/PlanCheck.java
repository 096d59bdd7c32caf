package org.flitchbook.planning;

import static org.flitchbook.message.Message.say;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import org.flitchbook.book.BookFolder;
import org.flitchbook.book.PlannedBook;
import org.flitchbook.job.ExitStatus;
import org.flitchbook.job.JobResult;
import org.flitchbook.job.Session;
import org.flitchbook.job.UsageException;
import org.flitchbook.message.Message;
import org.flitchbook.message.Word;
import org.flitchbook.plan.Ingredient;
import org.flitchbook.plan.Plan;
import org.flitchbook.plan.Product;

/** Checks plans. */
public final class PlanCheck {

  private PlanCheck() {}

  /**
   * Reads a plan with all that it draws on, and lists the limits of each product and what its class
   * asks for beyond them.
   *
   * @throws UsageException where there is no plan
   */
  public static JobResult check(Session session, Path where) {
    PlannedBook book = BookFolder.read(session, where);
    return book.plan()
        .map(plan -> result(session, plan))
        .orElseGet(() -> JobResult.broken(book.faults()));
  }

  private static JobResult result(Session session, Plan plan) {
    boolean isOpen =
        plan.products().stream()
            .anyMatch(
                each ->
                    !each.missing().isEmpty()
                        || !each.open().isEmpty()
                        || !each.conflicts().isEmpty());
    List<Message> lines = new ArrayList<>();
    lines.add(
        isOpen
            ? say("planning.open", "Plan version {0} leaves something open.", plan.version())
            : say("planning.usable", "Plan version {0} can be used.", plan.version()));
    plan.products().forEach(product -> lines.addAll(lines(product)));
    plan.ingredients().stream()
        .filter(each -> each.lacksLabel(plan.practice().dayCure()))
        .forEach(each -> lines.add(unusual(plan, each)));
    ExitStatus status = isOpen ? ExitStatus.AMISS : ExitStatus.WELL;
    return new JobResult(status, session.lines(lines), "", List.of());
  }

  /** A ready mix may be right; who uses it without its label is asked. */
  private static Message unusual(Plan plan, Ingredient cure) {
    return say(
        "planning.strength",
        "{0}, {1}: {2} nitrite, not the usual {3} to {4}; a lot cured with it is asked about, until"
            + " its \"support\" names the bag's label",
        cure.lot(),
        cure.name(),
        cure.nitrite(),
        plan.practice().dayCure().from(),
        plan.practice().dayCure().to());
  }

  private static List<Message> lines(Product product) {
    List<Message> lines = new ArrayList<>();
    lines.add(
        Message.count(
            "planning.product",
            product.limits().size(),
            "{1}, {2}: {0} limit",
            "{1}, {2}: {0} limits",
            product.code(),
            product.name()));
    for (Product.Exempt each : product.exemptions()) {
      lines.add(
          say(
              "planning.exempt",
              "    exempt from {0}: {1}; support: {2}",
              new Word("covers", each.exemption().covers()),
              new Word("name", each.exemption().name()),
              each.support()));
    }
    for (Product.Missing each : product.missing()) {
      lines.add(
          say(
              "planning.missing",
              "    no limit covers {0}. {1} ({2})",
              new Word("covers", each.covers()),
              each.because(),
              each.source().cited()));
    }
    product.open().forEach(each -> lines.add(say("planning.limit-open", "    {0}", each)));
    product
        .conflicts()
        .forEach(each -> lines.add(say("planning.conflict", "    limits in conflict: {0}", each)));
    return lines;
  }
}
