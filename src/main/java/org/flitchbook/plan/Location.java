package org.flitchbook.plan;

/** A place of the plan: a cooler, a sink, a smoker. */
public record Location(String id, String name, String kind) {}
