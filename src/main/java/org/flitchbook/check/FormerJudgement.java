package org.flitchbook.check;

import java.time.LocalDate;

/**
 * What a lot comes to under a plan that was in force for a part of its time.
 *
 * @param until the day on which the next version took its place
 */
public record FormerJudgement(String version, LocalDate until, Judgement judgement) {}
