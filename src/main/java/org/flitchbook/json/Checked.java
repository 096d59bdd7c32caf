package org.flitchbook.json;

/** A record that judges what its components can't judge one by one, once all of them are there. */
public interface Checked {

  /** Puts what is wrong to the faults of the object that the record was bound from. */
  void check(Fields object);
}
