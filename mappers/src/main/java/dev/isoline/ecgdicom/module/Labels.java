package dev.isoline.ecgdicom.module;

/** Free words of a recording's file, made to fit attributes that identify nothing. */
final class Labels {

    private Labels() {}

    static String cut(String text, int longest) {
        String clean = text.replaceAll("[\\p{Cntrl}\\\\]", " ").strip();
        int end =
                clean.offsetByCodePoints(
                        0, Math.min(longest, clean.codePointCount(0, clean.length())));
        return clean.substring(0, end).strip();
    }
}
