package org.demebook.rest;

import com.fasterxml.jackson.annotation.JsonInclude;
import com.fasterxml.jackson.core.JsonGenerator;
import com.fasterxml.jackson.core.JsonParser;
import com.fasterxml.jackson.core.StreamReadConstraints;
import com.fasterxml.jackson.databind.DeserializationFeature;
import com.fasterxml.jackson.databind.ObjectMapper;
import com.fasterxml.jackson.databind.SerializationFeature;
import io.quarkus.jackson.ObjectMapperCustomizer;
import jakarta.inject.Singleton;

/** JSON as this server reads and writes it: nothing unknown, nothing twice, nothing endless, no null that is just absent. */
@Singleton
class JsonManners implements ObjectMapperCustomizer {
    private static final long MOST_BYTES = 1 << 20;
    private static final int DEEPEST = 16;
    private static final int LONGEST_STRING = 20_000;

    @Override
    public void customize(ObjectMapper mapper) {
        mapper.getFactory()
                .setStreamReadConstraints(StreamReadConstraints.builder()
                        .maxDocumentLength(MOST_BYTES)
                        .maxNestingDepth(DEEPEST)
                        .maxStringLength(LONGEST_STRING)
                        .maxNumberLength(40)
                        .build());
        mapper.enable(DeserializationFeature.FAIL_ON_UNKNOWN_PROPERTIES);
        mapper.enable(DeserializationFeature.FAIL_ON_NULL_FOR_PRIMITIVES);
        mapper.enable(DeserializationFeature.FAIL_ON_TRAILING_TOKENS);
        mapper.disable(DeserializationFeature.ACCEPT_FLOAT_AS_INT);
        mapper.enable(JsonParser.Feature.STRICT_DUPLICATE_DETECTION);
        mapper.enable(JsonGenerator.Feature.WRITE_BIGDECIMAL_AS_PLAIN);
        mapper.disable(SerializationFeature.WRITE_DATES_AS_TIMESTAMPS);
        mapper.setDefaultPropertyInclusion(JsonInclude.Include.NON_NULL);
    }
}
