/** ISHNE Holter 1.0 (Badilini, Annals of Noninvasive Electrocardiology 1998;3:263-266). */
package dev.isoline.ecg.ishne;
