package org.flitchbook.desk;

import java.util.List;
import org.flitchbook.message.Message;
import org.flitchbook.plan.Plan;
import org.flitchbook.plan.Product;
import org.flitchbook.words.Words;

/** What there is to say of a plan: of each product its limits, and what it leaves open. */
final class PlanTold {

  private final StringBuilder text = new StringBuilder();
  private boolean isOpen;

  private PlanTold() {}

  static Answer of(Plan plan) {
    PlanTold told = new PlanTold();
    plan.products().forEach(product -> told.tell(product, plan.words()));
    return told.answer(plan);
  }

  private void tell(Product product, Words words) {
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
    for (Message conflict : product.conflicts()) {
      isOpen = true;
      text.append("    limits in conflict: ").append(conflict.in(words)).append('\n');
    }
  }

  private Answer answer(Plan plan) {
    String head = "Plan version " + plan.version();
    String state = isOpen ? " leaves something open.\n" : " can be used.\n";
    Status status = isOpen ? Status.AMISS : Status.WELL;
    return new Answer(status, head + state + text, "", List.of(), List.of());
  }
}
