package dev.isoline.ecg;

import java.util.ArrayList;
import java.util.List;

/** What a reader finds wrong with its files, and what it tells of them. */
public final class Faults {

    private static final int MOST = 100;
    private static final String SALVAGED = "Salvaged: ";

    private final Damage damage;
    private final List<String> notes = new ArrayList<>();

    public Faults(Damage damage) {
        this.damage = damage;
    }

    /**
     * A fault that can be read past: refused, or noted where damage is to be salvaged.
     *
     * @param sentence what is wrong and how much is missing
     */
    public void found(String sentence) throws RecordingException {
        if (damage == Damage.REFUSE) {
            throw new RecordingException(sentence);
        }
        note(SALVAGED + sentence);
    }

    /** Whether a note of a header says that the recording is short or damaged. */
    public static boolean isSalvaged(String note) {
        return note.startsWith(SALVAGED);
    }

    /** Nothing that makes the recording unreadable; each sentence once, and no endless list. */
    public void note(String sentence) {
        if (notes.size() < MOST && !notes.contains(sentence)) {
            notes.add(sentence);
        } else if (notes.size() == MOST) {
            notes.add("More was found than is listed here.");
        }
    }

    /** So far: they grow while a recording is read. */
    public List<String> notes() {
        return List.copyOf(notes);
    }
}
