package dev.isoline.dicom.spi;

import java.io.IOException;

/** An operation needs a presentation context the peer did not accept, or was not offered. */
public final class ContextNotAccepted extends IOException {

    private static final long serialVersionUID = 1;

    private final String abstractSyntax;

    /**
     * @param abstractSyntax the SOP class that has no context
     * @param fault why, in words, such as "abstract syntax not supported" (PS3.8 table 9-18)
     */
    public ContextNotAccepted(String abstractSyntax, String fault) {
        super("no presentation context for SOP class " + abstractSyntax + ": " + fault);
        this.abstractSyntax = abstractSyntax;
    }

    public String abstractSyntax() {
        return abstractSyntax;
    }
}
