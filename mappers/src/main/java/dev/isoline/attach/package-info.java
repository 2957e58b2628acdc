/**
 * What is known about an order's patient is attached to it, judged, and sent on: pure functions
 * over FHIR R4 resources. Resources have an id of their own and refer to each other relatively
 * ({@code Patient/…}); resolving a reference is handed in as a function.
 */
package dev.isoline.attach;
