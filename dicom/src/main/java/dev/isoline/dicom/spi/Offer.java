package dev.isoline.dicom.spi;

import dev.isoline.dicom.TransferSyntax;
import java.util.ArrayList;
import java.util.Collection;
import java.util.List;

/**
 * The presentation contexts a requestor offers, PS3.8 7.1.1.13.
 *
 * @param contexts 1 to 128 of them
 */
public record Offer(List<OfferedContext> contexts) {

    /** Odd numbers from 1 to 255, PS3.8 9.3.2.2. */
    private static final int MOST = 128;

    /**
     * @throws IllegalArgumentException where there are none or more than context ids
     */
    public Offer {
        contexts = List.copyOf(contexts);
        if (contexts.isEmpty() || contexts.size() > MOST) {
            throw new IllegalArgumentException("an association has 1 to 128 contexts");
        }
    }

    /** C-ECHO. */
    public static Offer verification() {
        return of(List.of(SopClass.VERIFICATION), Role.SCU);
    }

    /**
     * C-STORE of objects of these SOP classes. Explicit and Implicit VR are contexts of their own,
     * so that a file can be sent in the one it has.
     */
    public static Offer storage(Collection<String> sopClasses) {
        return of(sopClasses, Role.SCU);
    }

    /** C-FIND of {@link SopClass#MODALITY_WORKLIST_FIND}. */
    public static Offer worklist() {
        return of(List.of(SopClass.MODALITY_WORKLIST_FIND), Role.SCU);
    }

    /** N-ACTION of {@link SopClass#STORAGE_COMMITMENT}. */
    public static Offer commitment() {
        return of(List.of(SopClass.STORAGE_COMMITMENT), Role.SCU);
    }

    /** N-EVENT-REPORT of an archive to who asked it: the requestor is the SCP, PS3.4 J.3.3. */
    public static Offer commitmentResults() {
        return of(List.of(SopClass.STORAGE_COMMITMENT), Role.SCP);
    }

    /** These contexts and those of the other offer. */
    public Offer and(Offer other) {
        var both = new ArrayList<>(contexts);
        both.addAll(other.contexts);
        return new Offer(both);
    }

    private static Offer of(Collection<String> abstractSyntaxes, Role role) {
        var contexts = new ArrayList<OfferedContext>();
        for (String abstractSyntax : abstractSyntaxes) {
            contexts.add(context(abstractSyntax, TransferSyntax.EXPLICIT_VR_LITTLE_ENDIAN, role));
            contexts.add(context(abstractSyntax, TransferSyntax.IMPLICIT_VR_LITTLE_ENDIAN, role));
        }
        return new Offer(contexts);
    }

    private static OfferedContext context(String syntax, TransferSyntax transfer, Role role) {
        return new OfferedContext(syntax, List.of(transfer), role);
    }
}
