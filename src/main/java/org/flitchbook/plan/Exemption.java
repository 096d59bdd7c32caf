package org.flitchbook.plan;

/**
 * A named case in which a control is not needed, as a rule set lists it.
 *
 * @param name by which a plan names it
 * @param covers the hazard control that it stands for
 */
public record Exemption(String name, String covers, String because, Source source) {}
