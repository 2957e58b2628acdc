package dev.isoline.dicom;

import java.util.Collection;
import java.util.List;
import java.util.Optional;
import java.util.TreeMap;

/**
 * Data elements in ascending order of their tags, PS3.5 chapter 7.
 *
 * <p>Getters convert by VR and answer empty where an element is absent or has no value; setters
 * take the VR of {@link Dictionary}. Text is held as UTF-8 until it is written.
 */
public final class DataSet {

    private final TreeMap<Integer, Element> elements = new TreeMap<>(Integer::compareUnsigned);

    public Collection<Element> elements() {
        return elements.values();
    }

    public Optional<Element> element(int tag) {
        return Optional.ofNullable(elements.get(tag));
    }

    public boolean contains(int tag) {
        return elements.containsKey(tag);
    }

    /** True where the element is present and not empty. */
    public boolean hasValue(int tag) {
        return element(tag).filter(e -> !e.isEmpty()).isPresent();
    }

    /** Puts an element in the place of the one with the same tag. */
    public DataSet put(Element element) {
        elements.put(element.tag(), element);
        return this;
    }

    /** Puts every element of the other data set. */
    public DataSet putAll(DataSet other) {
        elements.putAll(other.elements);
        return this;
    }

    /** Removes an element; with a private creator goes what it reserved, PS3.5 7.8.1. */
    public DataSet remove(int tag) {
        elements.remove(tag);
        if (Tag.isPrivateCreator(tag)) {
            int block = tag & 0xFFFF_0000 | (tag & 0xFF) << 8;
            elements.subMap(block, true, block | 0xFF, true).clear();
        }
        return this;
    }

    /** The element with no value. */
    public DataSet putEmpty(int tag) {
        Vr vr = Dictionary.vr(tag);
        return vr == Vr.SQ ? putItems(tag, List.of()) : putBytes(tag, vr, new byte[0]);
    }

    /** Text values; several only where a backslash parts them. */
    public DataSet putText(int tag, String... values) throws DicomException {
        return putText(tag, Dictionary.vr(tag), values);
    }

    /** Text values of an element whose VR the dictionary does not know. */
    public DataSet putText(int tag, Vr vr, String... values) throws DicomException {
        return put(ElementValues.text(tag, vr, values));
    }

    /** Integers of IS, US, SS, UL, SL, SV, UV or AT. */
    public DataSet putInts(int tag, long... values) throws DicomException {
        return putInts(tag, Dictionary.vr(tag), values);
    }

    /** Integers of an element whose VR the dictionary does not know. */
    public DataSet putInts(int tag, Vr vr, long... values) throws DicomException {
        return put(ElementValues.integers(tag, vr, values));
    }

    /** Numbers of DS, FL or FD; a DS is rounded to the 16 characters it may have. */
    public DataSet putNumbers(int tag, double... values) throws DicomException {
        return putNumbers(tag, Dictionary.vr(tag), values);
    }

    /** Numbers of an element whose VR the dictionary does not know. */
    public DataSet putNumbers(int tag, Vr vr, double... values) throws DicomException {
        return put(ElementValues.numbers(tag, vr, values));
    }

    public DataSet putItems(int tag, List<DataSet> items) {
        return put(new Element(tag, Vr.SQ, new Value.Items(items)));
    }

    public DataSet putBytes(int tag, Vr vr, byte[] bytes) {
        return put(new Element(tag, vr, new Value.Bytes(bytes, CharacterSet.ISO_IR_192)));
    }

    public DataSet putBulk(int tag, Vr vr, BulkValue bulk) {
        return put(new Element(tag, vr, new Value.Bulk(bulk)));
    }

    /** First text value, padding removed. */
    public Optional<String> text(int tag) throws DicomException {
        return texts(tag).stream().findFirst().filter(t -> !t.isEmpty());
    }

    /** All text values, padding removed. */
    public List<String> texts(int tag) throws DicomException {
        Element element = elements.get(tag);
        return element == null ? List.of() : ElementValues.texts(element);
    }

    /**
     * Integers of IS, US, SS, UL, SL, SV or AT, the unsigned ones as they are; UV as its 64 bits.
     */
    public List<Long> ints(int tag) throws DicomException {
        Element element = elements.get(tag);
        return element == null ? List.of() : ElementValues.integers(element);
    }

    /** First integer. */
    public Optional<Long> integer(int tag) throws DicomException {
        return ints(tag).stream().findFirst();
    }

    /** Numbers of DS, FL, FD or an integer VR; none for an empty value among them. */
    public List<Double> numbers(int tag) throws DicomException {
        Element element = elements.get(tag);
        return element == null ? List.of() : ElementValues.numbers(element);
    }

    /** First number of DS, FL, FD or an integer VR. */
    public Optional<Double> number(int tag) throws DicomException {
        return numbers(tag).stream().findFirst();
    }

    /** Bytes of a value held in memory, empty where the element is absent. */
    public byte[] bytes(int tag) throws DicomException {
        Element element = elements.get(tag);
        return element == null ? new byte[0] : element.bytes().clone();
    }

    /** Items of a sequence, none where it is absent. */
    public List<DataSet> items(int tag) {
        return element(tag).map(Element::items).orElse(List.of());
    }

    /** First item of a sequence. */
    public Optional<DataSet> item(int tag) {
        return items(tag).stream().findFirst();
    }

    @Override
    public boolean equals(Object other) {
        return other instanceof DataSet that && elements.equals(that.elements);
    }

    @Override
    public int hashCode() {
        return elements.hashCode();
    }

    /** Tags only: values may concern a patient. */
    @Override
    public String toString() {
        return elements.keySet().stream().map(Tag::format).toList().toString();
    }
}
