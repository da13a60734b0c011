package org.roundsman.dispatch;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.awt.image.BufferedImage;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.charset.StandardCharsets;
import java.util.Arrays;
import java.util.Collections;
import java.util.List;
import java.util.Optional;
import java.util.zip.CRC32;
import javax.imageio.ImageIO;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.roundsman.fleet.InputRejected;
import org.roundsman.reports.ReportLook.Brand;

/** How the firm and customers are presented, and which pictures are taken. */
class BrandsDbTest {

    private DispatchFixture at;
    private Brands brands;
    private long customer;

    @BeforeEach
    void aCustomer() {
        at = DispatchFixture.on("report_brands");
        brands = new Brands(at.parts);
        customer = at.customer("Pebblegate Dental", "Europe/London");
    }

    private static byte[] picture(String format, int width, int height) throws IOException {
        ByteArrayOutputStream out = new ByteArrayOutputStream();
        assertThat(ImageIO.write(new BufferedImage(width, height, BufferedImage.TYPE_INT_RGB), format, out))
                .isTrue();
        return out.toByteArray();
    }

    private static BrandDraft with(byte[] logo) {
        return new BrandDraft("Pebblegate Dental", "", Optional.of(logo), false, List.of());
    }

    private void refused(byte[] logo, String why) {
        assertThatThrownBy(() -> brands.save(customer, with(logo)))
                .isInstanceOfSatisfying(InputRejected.class, e -> assertThat(e.faults())
                        .hasEntrySatisfying("logo", fault -> assertThat(fault).contains(why)));
        assertThat(brands.of(customer).logo()).isEmpty();
    }

    @Test
    void withoutABrandANameStands() {
        assertThat(brands.firm().name()).isEqualTo("Roundsman");
        assertThat(brands.of(customer).name()).isEqualTo("Pebblegate Dental");
        assertThat(brands.of(customer).colour()).isEmpty();
    }

    @Test
    void aLogoStaysUntilItIsReplacedOrDropped() throws IOException {
        byte[] png = picture("png", 120, 40);
        brands.save(
                customer,
                new BrandDraft(" Pebblegate ", "#1B6E53", Optional.of(png), false, List.of("1 Quay", " ", "Ask Wren")));
        brands.save(
                customer, new BrandDraft("Pebblegate Dental", "#1b6e53", Optional.empty(), false, List.of("1 Quay")));
        Brand kept = brands.of(customer);
        assertThat(kept.logo()).isEqualTo(png);
        assertThat(kept.logoType()).isEqualTo("image/png");
        assertThat(kept.lines()).containsExactly("1 Quay");
        assertThat(kept.colour()).isEqualTo("#1b6e53");
        byte[] jpeg = picture("jpeg", 60, 60);
        brands.save(customer, with(jpeg));
        assertThat(brands.of(customer).logoType()).isEqualTo("image/jpeg");
        brands.save(customer, new BrandDraft("Pebblegate Dental", "", Optional.empty(), true, List.of()));
        assertThat(brands.of(customer).logo()).isEmpty();
        brands.save(customer, new BrandDraft("Pebblegate Dental", "", Optional.empty(), true, List.of()));
        assertThat(at.done(customer))
                .as("the last one changed nothing")
                .containsExactly("changed", "changed", "changed", "changed");
    }

    @Test
    void whatIsNoPictureIsRefusedWhateverItIsCalled() throws IOException {
        refused(
                "<svg xmlns='http://www.w3.org/2000/svg'/>".getBytes(StandardCharsets.UTF_8),
                "neither a PNG nor a JPEG");
        refused(picture("gif", 10, 10), "neither a PNG nor a JPEG");
        refused(new byte[0], "not empty");
        refused(new byte[256 * 1024 + 1], "at most 256 KiB");
        byte[] png = picture("png", 120, 40);
        refused(Arrays.copyOf(png, 30), "damaged");
        byte[] jpeg = picture("jpeg", 60, 60);
        refused(Arrays.copyOf(jpeg, 20), "damaged");
        byte[] mixed = png.clone();
        mixed[1] = 'X';
        refused(mixed, "neither a PNG nor a JPEG");
    }

    @Test
    void aPictureOfTooManyPixelsIsRefusedBeforeItIsUnpacked() throws IOException {
        refused(picture("png", 4001, 1), "4000 by 4000");
        refused(claiming(100_000, 100_000), "4000 by 4000");
        brands.save(customer, with(picture("png", 4000, 3)));
        assertThat(brands.of(customer).logo()).isNotEmpty();
    }

    /** A PNG whose header says so; RFC 2083, 3.2 and 4.1.1: signature, then IHDR at octet 8 with its CRC. */
    private static byte[] claiming(int width, int height) throws IOException {
        byte[] png = picture("png", 1, 1);
        ByteBuffer.wrap(png).putInt(16, width).putInt(20, height);
        CRC32 crc = new CRC32();
        crc.update(png, 12, 17);
        ByteBuffer.wrap(png).putInt(29, (int) crc.getValue());
        return png;
    }

    @Test
    void theOtherFieldsAreCheckedToo() {
        BrandDraft wrong = new BrandDraft(" ", "red", Optional.empty(), false, Collections.nCopies(9, "line"));
        assertThatThrownBy(() -> brands.saveFirm(wrong))
                .isInstanceOfSatisfying(
                        InputRejected.class, e -> assertThat(e.faults()).containsOnlyKeys("name", "colour", "lines"));
        assertThatThrownBy(() -> brands.save(-1, new BrandDraft("Nobody", "", Optional.empty(), false, List.of())))
                .isInstanceOfSatisfying(
                        InputRejected.class, e -> assertThat(e.faults()).containsOnlyKeys("customer"));
    }
}
