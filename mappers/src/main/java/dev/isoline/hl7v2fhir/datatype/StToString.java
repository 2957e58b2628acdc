package dev.isoline.hl7v2fhir.datatype;

import ca.uhn.hl7v2.model.Composite;
import ca.uhn.hl7v2.model.DataTypeException;
import ca.uhn.hl7v2.model.Primitive;
import ca.uhn.hl7v2.model.Type;
import ca.uhn.hl7v2.model.Varies;

/** ST, ID, IS, NM, TX (HL7 v2.5.1 ch. 2.A) to a FHIR string: never blank, never the HL7 null. */
public final class StToString {

    private static final String HL7_NULL = "\"\"";

    private StToString() {}

    /** The text without outer blanks; null when the component is empty or the HL7 null. */
    public static String map(Primitive primitive) {
        return map(primitive.getValue());
    }

    static String map(String value) {
        if (value == null || value.equals(HL7_NULL)) {
            return null;
        }
        String text = value.strip();
        return text.isEmpty() ? null : printable(text);
    }

    /** First component of any type. */
    public static String first(Type type) {
        Primitive primitive = firstPrimitive(type);
        return primitive == null ? null : map(primitive);
    }

    /** HL7 v2.5.1 ch. 2.5.3: two quote characters ask the receiver to delete the field. */
    public static boolean isNull(Type type) {
        Primitive primitive = firstPrimitive(type);
        return primitive != null && HL7_NULL.equals(primitive.getValue());
    }

    private static Primitive firstPrimitive(Type type) {
        Type at = type instanceof Varies varies ? varies.getData() : type;
        while (at instanceof Composite composite) {
            at = component(composite);
        }
        return at instanceof Primitive primitive ? primitive : null;
    }

    private static Type component(Composite composite) {
        try {
            return composite.getComponent(0);
        } catch (DataTypeException e) {
            return null;
        }
    }

    /** FHIR strings hold no control character but tab, CR and LF. */
    private static String printable(String text) {
        for (int i = 0; i < text.length(); i++) {
            if (isControl(text.charAt(i))) {
                return text.replaceAll("[\\x00-\\x08\\x0b\\x0c\\x0e-\\x1f]", " ").strip();
            }
        }
        return text;
    }

    private static boolean isControl(char c) {
        return c < ' ' && c != '\t' && c != '\r' && c != '\n';
    }
}
