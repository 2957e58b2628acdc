package dev.isoline.fhir;

/** Names of identifier and code systems in what the gateway writes. */
public final class Systems {

    public static final String LOINC = "http://loinc.org";
    public static final String SNOMED_CT = "http://snomed.info/sct";
    public static final String IEEE_11073 = "urn:iso:std:iso:11073:10101";
    public static final String UCUM = "http://unitsofmeasure.org";
    public static final String DICOM = "http://dicom.nema.org/resources/ontology/DCM";
    public static final String IDENTIFIER_TYPE = "http://terminology.hl7.org/CodeSystem/v2-0203";
    public static final String DIAGNOSTIC_SERVICE = "http://terminology.hl7.org/CodeSystem/v2-0074";

    /** Names and URNs that identify by themselves (FHIR R4, identifier registry). */
    public static final String URI = "urn:ietf:rfc:3986";

    /** DICOM UIDs as identifiers (FHIR R4, ImagingStudy.identifier). */
    public static final String DICOM_UID = "urn:dicom:uid";

    public static final String METRIC =
            "https://isoline.example/fhir/CodeSystem/ambulatory-ecg-metric";
    public static final String BUSINESS_STATUS =
            "https://isoline.example/fhir/CodeSystem/order-business-status";

    /** The Task that carries an order's state; its value is the order's id. */
    public static final String ORDER_TASK = "https://isoline.example/fhir/order-task";

    /** Tag that stands in for an identifier on types that have none, such as Provenance. */
    public static final String RESOURCE_TAG = "https://isoline.example/fhir/resource";

    private Systems() {}
}
