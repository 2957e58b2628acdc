/**
 * The result of a recording in FHIR R4.
 *
 * <p>Shape of the bundle, for whoever maps it further (each Observation or component is one value):
 *
 * <ul>
 *   <li>entry 0 is the DiagnosticReport; {@code result} lists the Observations in reading order:
 *       panels (quality, one per lead, rate, hour by hour, beats, ventricular and supraventricular
 *       ectopy, one per kind of episode, pauses, heart rate variability); the episodes of a kind
 *       follow their panel, which names them as {@code hasMember}.
 *   <li>A panel has no value of its own; its {@code component}s have. An episode has its kind as
 *       value, an effectivePeriod, and duration, beats and rates as components; a pause has its
 *       length (ms) as value and no component.
 *   <li>Code of Observation or component: LOINC codings first where there are any (without a
 *       display), last the project's own coding with its display; {@code code.text} names it.
 *   <li>Value: Quantity in UCUM ({@code code} is the unit), dateTime, string, or SampledData for
 *       the hourly series (period 3 600 000 ms, one dimension; {@code E} where an hour has no
 *       value); or no value and a {@code dataAbsentReason}: {@code not-performed} or {@code
 *       unknown}, with the reason as text. Zero is a value.
 *   <li>{@code note}s hold what a reader has to know; {@code DiagnosticReport.conclusion} is the
 *       report in sentences and says that it is preliminary.
 *   <li>References between entries are {@code urn:uuid:} full URLs.
 * </ul>
 */
package dev.isoline.ecgfhir;
