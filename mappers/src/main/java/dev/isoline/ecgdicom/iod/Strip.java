package dev.isoline.ecgdicom.iod;

import dev.isoline.ecg.Stretch;
import java.util.List;

/**
 * A short part of a recording that gets an object of its own.
 *
 * @param window its samples, within one gap-free block
 * @param reasons what is to be seen there, a few words each
 */
record Strip(Stretch window, List<String> reasons) {

    boolean shows(Stretch event) {
        return window.from() <= event.from() && event.to() <= window.to();
    }
}
