package dev.isoline.worklist;

import dev.isoline.dicom.DataSet;
import dev.isoline.dicom.DicomException;
import dev.isoline.dicom.Tag;
import java.io.UncheckedIOException;
import java.time.LocalDateTime;
import java.time.ZoneOffset;
import java.time.format.DateTimeFormatter;
import java.util.List;
import java.util.Locale;
import java.util.Optional;

/**
 * A worklist item as one caller sees it. A step for any station is scheduled for the one that asks;
 * dates and times stand in the caller's offset where the request names one (PS3.4 K.4.1.1.3), else
 * in local time of who placed the order.
 */
final class CallersView {

    private CallersView() {}

    /**
     * @param station the one asked for, else the one that asks
     */
    static DataSet of(DataSet item, String station, Optional<ZoneOffset> offset) {
        var step = new DataSet().putAll(StoredItem.step(item));
        if (!step.hasValue(Tag.ScheduledStationAETitle)) {
            put(step, Tag.ScheduledStationAETitle, station);
        }
        var seen = new DataSet().putAll(item);
        offset.ifPresent(to -> shift(seen, step, stored(item), to));
        return seen.putItems(Tag.ScheduledProcedureStepSequence, List.of(step));
    }

    /** An offset as (0008,0201) has it. */
    static String text(ZoneOffset offset) {
        return DateTimeFormatter.ofPattern("xx", Locale.ROOT).format(offset);
    }

    static void put(DataSet dataSet, int tag, String text) {
        try {
            dataSet.putText(tag, text);
        } catch (DicomException e) {
            throw new UncheckedIOException(e);
        }
    }

    private static ZoneOffset stored(DataSet item) {
        return ZoneOffset.of(StoredItem.text(Tag.TimezoneOffsetFromUTC, item));
    }

    private static void shift(DataSet item, DataSet step, ZoneOffset from, ZoneOffset to) {
        shift(
                step,
                Tag.ScheduledProcedureStepStartDate,
                Tag.ScheduledProcedureStepStartTime,
                from,
                to);
        shift(step, Tag.ScheduledProcedureStepEndDate, Tag.ScheduledProcedureStepEndTime, from, to);
        shift(
                item,
                Tag.IssueDateOfImagingServiceRequest,
                Tag.IssueTimeOfImagingServiceRequest,
                from,
                to);
    }

    private static void shift(DataSet dataSet, int date, int time, ZoneOffset from, ZoneOffset to) {
        if (dataSet.hasValue(date)) {
            LocalDateTime moved =
                    DateKey.date(StoredItem.text(date, dataSet))
                            .atTime(TimeKey.time(StoredItem.text(time, dataSet)))
                            .atOffset(from)
                            .withOffsetSameInstant(to)
                            .toLocalDateTime();
            String number = Long.toString(StartNumber.of(moved));
            put(dataSet, date, number.substring(0, 8));
            put(dataSet, time, number.substring(8));
        }
    }
}
