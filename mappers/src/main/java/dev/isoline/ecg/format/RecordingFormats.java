package dev.isoline.ecg.format;

import dev.isoline.ecg.ChannelBytes;
import dev.isoline.ecg.Recording;
import dev.isoline.ecg.RecordingException;
import dev.isoline.ecg.RecordingFiles;
import dev.isoline.ecg.dicom.DicomRecording;
import dev.isoline.ecg.edf.EdfRecording;
import dev.isoline.ecg.wfdb.WfdbRecording;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;

/** Finds out by its first bytes, never by its name, which format a recording has, and opens it. */
public final class RecordingFormats {

    private static final int LOOK = 4096;
    private static final byte[] ISHNE = "ISHNE1.0".getBytes(StandardCharsets.US_ASCII);
    private static final byte[] BDF = {(byte) 0xff, 'B', 'I', 'O', 'S', 'E', 'M', 'I'};

    private enum Kind {
        DICOM,
        EDF,
        BDF,
        ISHNE,
        WFDB,
        EMPTY,
        TEXT,
        OTHER
    }

    private record Candidate(String name, Kind kind) {}

    private RecordingFormats() {}

    /**
     * Opens the one recording among the files.
     *
     * @throws RecordingException when there is none, more than one, or it cannot be read
     */
    public static Recording open(RecordingFiles files) throws IOException {
        var candidates = new ArrayList<Candidate>();
        for (String name : files.names()) {
            candidates.add(new Candidate(name, kind(files, name)));
        }
        var found = recordings(candidates);
        if (found.isEmpty()) {
            throw none(candidates);
        }
        if (found.size() > 1) {
            throw new RecordingException(
                    "There are " + found.size() + " recordings here; give one of them.");
        }
        return open(files, found.get(0));
    }

    /** A text that merely looks like a WFDB header steps back behind a file called one. */
    private static List<Candidate> recordings(List<Candidate> candidates) {
        var found =
                candidates.stream().filter(file -> file.kind().compareTo(Kind.WFDB) <= 0).toList();
        var sure =
                found.stream()
                        .filter(file -> file.kind() != Kind.WFDB || file.name().endsWith(".hea"))
                        .toList();
        return sure.isEmpty() ? found : sure;
    }

    private static Recording open(RecordingFiles files, Candidate file) throws IOException {
        switch (file.kind()) {
            case DICOM:
                return DicomRecording.open(files, file.name());
            case EDF:
                return EdfRecording.open(files, file.name());
            case WFDB:
                return WfdbRecording.open(files, file.name());
            default:
                throw new RecordingException(
                        "Recordings in "
                                + file.kind()
                                + " format are not read yet; EDF, EDF+, WFDB and DICOM are.");
        }
    }

    private static RecordingException none(List<Candidate> candidates) {
        if (candidates.size() != 1) {
            return new RecordingException(
                    "None of the files is an EDF file, a WFDB header or a DICOM object.");
        }
        switch (candidates.get(0).kind()) {
            case EMPTY:
                return new RecordingException("The file is empty.");
            case TEXT:
                return new RecordingException(
                        "The file is a text, not a recording: it begins neither as an EDF file nor"
                                + " as a WFDB header.");
            default:
                return new RecordingException(
                        "The file begins neither as an EDF file nor as a WFDB header.");
        }
    }

    private static Kind kind(RecordingFiles files, String name) throws IOException {
        byte[] start;
        try (var channel = files.open(name)) {
            var bytes = ChannelBytes.upTo(LOOK, channel);
            start = Arrays.copyOf(bytes.array(), bytes.limit());
        }
        if (start.length == 0) {
            return Kind.EMPTY;
        }
        if (DicomRecording.begins(start)) {
            return Kind.DICOM;
        }
        if (EdfRecording.begins(start)) {
            return Kind.EDF;
        }
        if (begins(start, BDF)) {
            return Kind.BDF;
        }
        return begins(start, ISHNE) ? Kind.ISHNE : text(start);
    }

    private static Kind text(byte[] start) {
        for (byte b : start) {
            if (b >= 0 && b < ' ' && b != '\t' && b != '\n' && b != '\r') {
                return Kind.OTHER;
            }
        }
        return WfdbRecording.begins(start) ? Kind.WFDB : Kind.TEXT;
    }

    private static boolean begins(byte[] start, byte[] magic) {
        return start.length >= magic.length
                && Arrays.equals(start, 0, magic.length, magic, 0, magic.length);
    }
}
