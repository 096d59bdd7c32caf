package org.flitchbook.document;

/** One piece of a document's content. */
public sealed interface Block
    permits Heading, Paragraph, Caution, Banner, Facts, Table, Sum, Chart, Signatures, PageBreak {}
