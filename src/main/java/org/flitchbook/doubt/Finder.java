package org.flitchbook.doubt;

import java.util.List;
import org.flitchbook.input.Fault;

/** Finds by one rule what is in doubt in a lot. */
interface Finder extends Named {

  List<Fault> find(Rule rule, Subject subject);
}
