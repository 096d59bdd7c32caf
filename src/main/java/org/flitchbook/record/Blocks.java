package org.flitchbook.record;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.flitchbook.document.Block;

/** The blocks of a record while it is put together, in their order. */
final class Blocks {

  private final List<Block> blocks = new ArrayList<>();

  Blocks add(Block block) {
    blocks.add(block);
    return this;
  }

  Blocks add(Optional<? extends Block> block) {
    block.ifPresent(blocks::add);
    return this;
  }

  Blocks add(List<? extends Block> more) {
    blocks.addAll(more);
    return this;
  }

  List<Block> list() {
    return List.copyOf(blocks);
  }
}
