package dev.isoline.ledger;

import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.core.type.TypeReference;
import com.fasterxml.jackson.databind.MapperFeature;
import com.fasterxml.jackson.databind.json.JsonMapper;
import dev.isoline.order.Problem;
import java.util.List;

/** The reasons of an order as a JSON array in one column. */
final class ReasonsJson {

    private static final JsonMapper MAPPER =
            JsonMapper.builder().disable(MapperFeature.AUTO_DETECT_IS_GETTERS).build();
    private static final TypeReference<List<Problem>> REASONS = new TypeReference<>() {};

    private ReasonsJson() {}

    static String write(List<Problem> reasons) {
        try {
            return reasons.isEmpty() ? "[]" : MAPPER.writeValueAsString(reasons);
        } catch (JsonProcessingException e) {
            throw new LedgerException("The reasons of an order cannot be written as JSON.", e);
        }
    }

    static List<Problem> read(String json) {
        try {
            return json.equals("[]") ? List.of() : MAPPER.readValue(json, REASONS);
        } catch (JsonProcessingException e) {
            throw new LedgerException("The reasons of an order are not the JSON expected.", e);
        }
    }
}
