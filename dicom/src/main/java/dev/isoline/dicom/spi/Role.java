package dev.isoline.dicom.spi;

/** What the requestor of an association is for a SOP class, PS3.7 D.3.3.4. */
public enum Role {
    /** The default: it invokes the operations. */
    SCU,
    /** It performs them, or reports events of them. */
    SCP,
    BOTH;

    public boolean scu() {
        return this != SCP;
    }

    public boolean scp() {
        return this != SCU;
    }
}
