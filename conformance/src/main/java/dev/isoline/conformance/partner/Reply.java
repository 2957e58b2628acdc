package dev.isoline.conformance.partner;

/** Status and body of an HTTP answer. */
public record Reply(int status, String body) {}
