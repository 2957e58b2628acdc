/** Which format a recording has, by its content. */
package dev.isoline.ecg.format;
