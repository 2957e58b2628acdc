package dev.isoline.intake;

import dev.isoline.order.OrderState;
import dev.isoline.order.Problem;
import java.util.List;

/** What became of one order: its state now and, where it is held or refused, why. */
public record OrderOutcome(String orderId, OrderState state, List<Problem> problems) {}
