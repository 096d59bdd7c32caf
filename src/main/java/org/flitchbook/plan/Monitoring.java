package org.flitchbook.plan;

/** What the plan says of a limit's monitoring; empty texts where it says nothing. */
public record Monitoring(String ccp, String monitored, String by, String ifMissed) {}
