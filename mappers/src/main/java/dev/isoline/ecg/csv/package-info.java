/** Text with a declared header, a form of this project's own: docs/formats.md, "CSV". */
package dev.isoline.ecg.csv;
