package org.roundsman.warranty;

import java.math.BigDecimal;
import java.time.LocalDate;
import java.util.Optional;
import org.roundsman.catalogue.WarrantyTerms;

/**
 * What of a model counts for cover and cost.
 *
 * @param label maker and name
 * @param listPrice of one piece, without tax; empty where not known
 * @param currency ISO 4217, empty without a price
 */
public record UnitModel(
        long id,
        String label,
        Optional<WarrantyTerms> terms,
        Optional<LocalDate> endOfSale,
        Optional<LocalDate> endOfSupport,
        Optional<BigDecimal> listPrice,
        String currency) {}
