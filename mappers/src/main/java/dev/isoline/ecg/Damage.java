package dev.isoline.ecg;

/** What is done with a recording that is short or damaged. */
public enum Damage {
    /** It is refused, with how much is missing. */
    REFUSE,
    /** What is readable is read; the notes of the header say what is not. */
    SALVAGE
}
