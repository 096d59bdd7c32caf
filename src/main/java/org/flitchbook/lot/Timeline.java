package org.flitchbook.lot;

import java.time.Instant;
import java.util.List;
import org.flitchbook.plan.Plan;
import org.flitchbook.reading.Entry;
import org.flitchbook.reading.Series;

/** What all lots share: the plan, the register, every entry and every series up to a time. */
record Timeline(
    Plan plan, Register register, List<Entry> entries, List<Series> series, Instant until) {}
