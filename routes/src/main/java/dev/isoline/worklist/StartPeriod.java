package dev.isoline.worklist;

import dev.isoline.dicom.DataSet;
import dev.isoline.dicom.Tag;
import java.time.LocalDate;
import java.time.LocalDateTime;
import java.time.LocalTime;
import java.util.List;
import java.util.Optional;
import java.util.function.Predicate;

/**
 * The start of a step as asked for. Where date and time are ranges of the same form they mean one
 * continuous period (PS3.4 table K.6-1, remark on Scheduled Procedure Step Start Time); else each
 * is matched by itself.
 *
 * @param date null where any will do
 * @param time null where any will do
 */
record StartPeriod(DateKey date, TimeKey time) {

    private static final int DATE = Tag.ScheduledProcedureStepStartDate;
    private static final int TIME = Tag.ScheduledProcedureStepStartTime;

    static StartPeriod of(DataSet step) throws UnusableKey {
        Optional<String> date = only(DATE, step);
        Optional<String> time = only(TIME, step);
        var period =
                new StartPeriod(
                        date.isPresent() ? DateKey.of(DATE, date.get()) : null,
                        time.isPresent() ? TimeKey.of(TIME, time.get()) : null);
        period.check();
        return period;
    }

    Predicate<DataSet> matching() {
        return step -> matches(start(step));
    }

    /** Earliest start that can match; the day's first moment where no time bounds it. */
    Optional<LocalDateTime> earliest() {
        return date == null || date.from() == null
                ? Optional.empty()
                : Optional.of(date.from().atTime(isContinuous() ? time.from() : LocalTime.MIN));
    }

    /** Latest start that can match. */
    Optional<LocalDateTime> latest() {
        return date == null || date.to() == null
                ? Optional.empty()
                : Optional.of(date.to().atTime(isContinuous() ? time.to() : LocalTime.MAX));
    }

    /** Start of an item's step. */
    static LocalDateTime start(DataSet step) {
        LocalDate date = DateKey.date(StoredItem.text(DATE, step));
        return date.atTime(TimeKey.time(StoredItem.text(TIME, step)));
    }

    private boolean matches(LocalDateTime start) {
        if (isContinuous()) {
            return earliest().filter(start::isBefore).isEmpty()
                    && latest().filter(start::isAfter).isEmpty();
        }
        return (date == null || date.matches(start.toLocalDate()))
                && (time == null || time.matches(start.toLocalTime()));
    }

    private boolean isContinuous() {
        return date != null
                && time != null
                && date.form() != KeyForm.SINGLE
                && date.form() == time.form();
    }

    private void check() throws UnusableKey {
        boolean reversed = earliest().flatMap(from -> latest().filter(from::isAfter)).isPresent();
        AttributeMatching.refuseReversed(DATE, reversed);
        AttributeMatching.refuseReversed(
                TIME, time != null && !isContinuous() && time.isReversed());
    }

    private static Optional<String> only(int tag, DataSet step) throws UnusableKey {
        List<String> keys = AttributeMatching.texts(tag, step);
        if (keys.size() > 1) {
            throw new UnusableKey(tag, "has more than one value");
        }
        return keys.stream().findFirst();
    }
}
