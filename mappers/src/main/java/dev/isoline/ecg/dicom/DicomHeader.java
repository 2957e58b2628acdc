package dev.isoline.ecg.dicom;

import dev.isoline.dicom.DataSet;
import dev.isoline.dicom.DicomException;
import dev.isoline.dicom.Tag;
import dev.isoline.ecg.RecordingException;
import dev.isoline.ecg.RecordingHeader;
import dev.isoline.ecg.RecordingHeader.Identity;
import java.time.DateTimeException;
import java.time.LocalDate;
import java.time.LocalDateTime;
import java.time.LocalTime;
import java.time.ZoneOffset;
import java.time.format.DateTimeFormatter;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Collectors;
import java.util.stream.Stream;

/** What a waveform object says of itself, its patient and its order. */
record DicomHeader(DataSet object) {

    private static final Map<String, String> NAMES =
            Map.of(
                    "1.2.840.10008.5.1.4.1.1.9.1.1", "12-lead ECG",
                    "1.2.840.10008.5.1.4.1.1.9.1.2", "General ECG",
                    "1.2.840.10008.5.1.4.1.1.9.1.3", "Ambulatory ECG",
                    "1.2.840.10008.5.1.4.1.1.9.1.4", "General 32-bit ECG");

    private static final int DAY = 8;

    RecordingHeader header(List<DicomWaveform> together) throws DicomException, RecordingException {
        String format = NAMES.get(text(Tag.SOPClassUID));
        if (format == null) {
            throw new RecordingException("The DICOM object is no ECG waveform.");
        }
        return new RecordingHeader(
                "DICOM " + format,
                identity(),
                start(),
                together.get(0).hz(),
                together.stream().flatMap(group -> group.leads().stream()).toList(),
                together.stream().mapToLong(DicomWaveform::samples).min().orElse(0),
                equipment(),
                List.of());
    }

    private Identity identity() throws DicomException {
        // The alphabetic group of PN: family, given, middle (PS3.5 6.2.1).
        String[] name = text(Tag.PatientName).split("=", 2)[0].split("\\^", -1);
        return new Identity(
                text(Tag.PatientID),
                name[0].strip(),
                Stream.of(name).skip(1).limit(2).collect(Collectors.joining(" ")).strip(),
                birthDate(),
                text(Tag.PatientSex).matches("[MF]") ? text(Tag.PatientSex) : "",
                orderNumber());
    }

    private String birthDate() throws DicomException {
        return day(text(Tag.PatientBirthDate)).map(LocalDate::toString).orElse("");
    }

    /** Accession number, else the number of the requested procedure, the filler's, the placer's. */
    private String orderNumber() throws DicomException {
        var numbers = new ArrayList<String>();
        numbers.add(text(Tag.AccessionNumber));
        var request = object.item(Tag.RequestAttributesSequence);
        if (request.isPresent()) {
            numbers.add(request.get().text(Tag.RequestedProcedureID).orElse(""));
        }
        numbers.add(text(Tag.FillerOrderNumberImagingServiceRequest));
        numbers.add(text(Tag.PlacerOrderNumberImagingServiceRequest));
        return numbers.stream().filter(number -> !number.isEmpty()).findFirst().orElse("");
    }

    /** Acquisition DateTime without its offset, else Content Date and Time. */
    private Optional<LocalDateTime> start() throws DicomException {
        String at = text(Tag.AcquisitionDateTime).split("[+-]", 2)[0];
        String content = text(Tag.ContentDate) + text(Tag.ContentTime).replace(":", "");
        return moment(at).or(() -> moment(content));
    }

    /** Of the start: how Acquisition DateTime ends, else (0008,0201), PS3.3 C.12.1.1.8. */
    Optional<ZoneOffset> offset() throws DicomException {
        String at = text(Tag.AcquisitionDateTime);
        int sign = Math.max(at.indexOf('+'), at.indexOf('-'));
        String offset = sign < 0 ? text(Tag.TimezoneOffsetFromUTC) : at.substring(sign);
        try {
            return offset.isEmpty() ? Optional.empty() : Optional.of(ZoneOffset.of(offset));
        } catch (DateTimeException e) {
            return Optional.empty();
        }
    }

    private static Optional<LocalDateTime> moment(String text) {
        if (text.length() <= DAY) {
            return Optional.empty();
        }
        String[] clock = text.substring(DAY).split("\\.", 2);
        try {
            LocalTime time =
                    LocalTime.parse(
                            (clock[0] + "000000").substring(0, 6),
                            DateTimeFormatter.ofPattern("HHmmss"));
            long nanos = clock.length < 2 ? 0 : nanos(clock[1]);
            return day(text.substring(0, DAY)).map(day -> day.atTime(time.plusNanos(nanos)));
        } catch (DateTimeException | NumberFormatException e) {
            return Optional.empty();
        }
    }

    private static long nanos(String fraction) {
        return Long.parseLong((fraction + "000000000").substring(0, 9));
    }

    private static Optional<LocalDate> day(String text) {
        try {
            return Optional.of(LocalDate.parse(text, DateTimeFormatter.BASIC_ISO_DATE));
        } catch (DateTimeException e) {
            return Optional.empty();
        }
    }

    private String equipment() throws DicomException {
        return Stream.of(
                        text(Tag.Manufacturer),
                        text(Tag.ManufacturerModelName),
                        text(Tag.DeviceSerialNumber))
                .filter(part -> !part.isEmpty())
                .collect(Collectors.joining(" "));
    }

    private String text(int tag) throws DicomException {
        return object.text(tag).orElse("").strip();
    }
}
