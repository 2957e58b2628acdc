package dev.isoline.worklist;

import dev.isoline.dicom.DataSet;
import dev.isoline.dicom.Tag;
import dev.isoline.ledger.WorklistSearch;
import java.time.DateTimeException;
import java.time.LocalDateTime;
import java.time.ZoneOffset;
import java.util.List;
import java.util.Optional;
import java.util.function.Predicate;
import java.util.function.UnaryOperator;
import java.util.stream.Stream;

/**
 * The identifier of a worklist query, PS3.4 K.4.1.1.3.1, its keys checked: nothing malformed comes
 * past {@link #of}.
 */
final class WorklistKeys {

    private final DataSet request;
    private final String station;
    private final Predicate<DataSet> matching;
    private final StartPeriod period;
    private final Optional<ZoneOffset> offset;

    private WorklistKeys(DataSet request, String caller) throws UnusableKey {
        this.request = request;
        this.matching = IdentifierMatching.of(CarriedAttributes.ITEM, request);
        DataSet step = request.item(Tag.ScheduledProcedureStepSequence).orElse(new DataSet());
        this.period = StartPeriod.of(step);
        this.offset = offset(request);
        this.station = plain(Tag.ScheduledStationAETitle, step).orElse(caller);
    }

    /**
     * @param caller AE title of who asks
     * @throws UnusableKey where a key cannot be matched; nobody is told more than they asked for
     */
    static WorklistKeys of(DataSet request, String caller) throws UnusableKey {
        return new WorklistKeys(request, caller);
    }

    /** What narrows the search in the ledger; what it finds has yet to be matched. */
    WorklistSearch search() {
        DataSet step = request.item(Tag.ScheduledProcedureStepSequence).orElse(new DataSet());
        return new WorklistSearch(
                period.earliest().map(this::widened).map(StartNumber::of).orElse(0L),
                period.latest().map(this::widenedOn).map(StartNumber::of).orElse(Long.MAX_VALUE),
                ofName(NameMatching::beginning),
                ofName(NameMatching::within),
                plain(Tag.PatientID, request),
                Stream.of(
                                plain(Tag.AccessionNumber, request),
                                plain(Tag.RequestedProcedureID, request),
                                plain(Tag.ScheduledProcedureStepID, step))
                        .flatMap(Optional::stream)
                        .findFirst(),
                plain(Tag.ScheduledStationAETitle, step));
    }

    /** The item as this caller sees it: a station for it, times in the caller's offset. */
    DataSet seen(DataSet item) {
        return CallersView.of(item, station, offset);
    }

    /**
     * @param item as {@link #seen}
     */
    boolean match(DataSet item) {
        return matching.test(item);
    }

    /**
     * @param item as {@link #seen}, and matched
     */
    DataSet answer(DataSet item) {
        DataSet answer = RequestedAttributes.of(request, item);
        AnswerCharacterSet.of(request, answer)
                .ifPresent(set -> CallersView.put(answer, Tag.SpecificCharacterSet, set.term()));
        offset.ifPresent(
                o -> CallersView.put(answer, Tag.TimezoneOffsetFromUTC, CallersView.text(o)));
        return answer;
    }

    /** Whether items may carry everything that was asked for. */
    boolean areCarried() {
        return RequestedAttributes.areCarried(CarriedAttributes.ITEM, request);
    }

    /** Offsets of senders and callers may be as far apart as the date line. */
    private LocalDateTime widened(LocalDateTime earliest) {
        return offset.isPresent() ? earliest.minusDays(2) : earliest;
    }

    private LocalDateTime widenedOn(LocalDateTime latest) {
        return offset.isPresent() ? latest.plusDays(2) : latest;
    }

    private String ofName(UnaryOperator<String> part) {
        List<String> keys = StoredItem.texts(Tag.PatientName, request);
        return keys.size() == 1 ? part.apply(keys.get(0)) : "";
    }

    /** A key that has one value without wild cards. */
    private static Optional<String> plain(int tag, DataSet keys) {
        List<String> texts = StoredItem.texts(tag, keys);
        return texts.size() == 1
                ? texts.stream().filter(t -> !t.isEmpty() && !WildCard.isIn(t)).findFirst()
                : Optional.empty();
    }

    private static Optional<ZoneOffset> offset(DataSet request) throws UnusableKey {
        String text = StoredItem.text(Tag.TimezoneOffsetFromUTC, request);
        try {
            return text.isEmpty() ? Optional.empty() : Optional.of(ZoneOffset.of(text));
        } catch (DateTimeException e) {
            throw new UnusableKey(Tag.TimezoneOffsetFromUTC, "is no offset of the form +HHMM");
        }
    }
}
