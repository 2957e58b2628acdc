/** What all FHIR the gateway writes has in common: names of systems, transaction bundles. */
package dev.isoline.fhir;
