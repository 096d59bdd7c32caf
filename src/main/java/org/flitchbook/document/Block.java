package org.flitchbook.document;

/** One piece of a document's content. */
public sealed interface Block
    permits Heading,
        Paragraph,
        Note,
        Caution,
        Banner,
        Facts,
        Table,
        Sum,
        Chart,
        Blank,
        Signatures,
        PageBreak {}
