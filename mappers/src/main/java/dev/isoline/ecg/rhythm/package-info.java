/**
 * From beats to rates, episodes and variability. No sample is seen here: beats a program found and
 * beats a person marked are measured alike. Definitions and sources: docs/analysis.md.
 */
package dev.isoline.ecg.rhythm;
