package org.roundsman.system;

import static java.nio.charset.StandardCharsets.UTF_8;
import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.attribute.PosixFilePermissions;
import java.util.Arrays;
import java.util.Base64;
import java.util.HexFormat;
import javax.crypto.Cipher;
import javax.crypto.spec.GCMParameterSpec;
import javax.crypto.spec.SecretKeySpec;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class SealerTest {

    private static final byte[] CONTEXT = "credential/7/community".getBytes(UTF_8);
    private static final byte[] SECRET = "amber-lantern".getBytes(UTF_8);

    @TempDir
    Path folder;

    @Test
    void aSealedSecretOpensAgainAndNeverLooksTheSameTwice() {
        Sealer sealer = new Sealer(SecretKey.in(folder.resolve("secret.key")));
        byte[] first = sealer.seal(SECRET, CONTEXT);
        byte[] second = sealer.seal(SECRET, CONTEXT);
        assertThat(first).isNotEqualTo(second);
        assertThat(sealer.open(first, CONTEXT)).isEqualTo(SECRET);
        assertThat(sealer.open(second, CONTEXT)).isEqualTo(SECRET);
        assertThat(sealer.open(sealer.seal(new byte[0], CONTEXT), CONTEXT)).isEmpty();
    }

    @Test
    void theKeyOutlivesTheProcessInItsFile() {
        Path file = folder.resolve("secret.key");
        byte[] sealed = new Sealer(SecretKey.in(file)).seal(SECRET, CONTEXT);
        assertThat(new Sealer(SecretKey.in(file)).open(sealed, CONTEXT)).isEqualTo(SECRET);
    }

    /** The layout is a promise: anybody with the key opens it with nothing but NIST SP 800-38D's AES-GCM. */
    @Test
    void theLayoutIsVersionKeyIdNonceCiphertextTag() throws Exception {
        Path file = folder.resolve("secret.key");
        byte[] sealed = new Sealer(SecretKey.in(file)).seal(SECRET, CONTEXT);
        byte[] key = Base64.getDecoder().decode(Files.readString(file).strip());
        Cipher cipher = Cipher.getInstance("AES/GCM/NoPadding");
        var nonce = new GCMParameterSpec(128, sealed, 5, 12);
        cipher.init(Cipher.DECRYPT_MODE, new SecretKeySpec(key, "AES"), nonce);
        cipher.updateAAD(sealed, 0, 5);
        cipher.updateAAD(CONTEXT);
        assertThat(cipher.doFinal(sealed, 17, sealed.length - 17)).isEqualTo(SECRET);
    }

    @Test
    void everyChangedByteIsNoticed() {
        Sealer sealer = new Sealer(SecretKey.in(folder.resolve("secret.key")));
        byte[] sealed = sealer.seal(SECRET, CONTEXT);
        for (int i = 0; i < sealed.length; i++) {
            byte[] bent = sealed.clone();
            bent[i] ^= 0x10;
            assertThatThrownBy(() -> sealer.open(bent, CONTEXT)).isInstanceOf(SealException.class);
        }
        assertThatThrownBy(() -> sealer.open(Arrays.copyOf(sealed, 20), CONTEXT))
                .hasMessageContaining("not a sealed secret: 20 bytes");
        assertThatThrownBy(() -> sealer.open(sealed, "credential/8/community".getBytes(UTF_8)))
                .hasMessageContaining("another place");
    }

    @Test
    void anotherKeyIsNamedWithItsFile() {
        byte[] sealed = new Sealer(SecretKey.in(folder.resolve("one.key"))).seal(SECRET, CONTEXT);
        Path other = folder.resolve("other.key");
        assertThatThrownBy(() -> new Sealer(SecretKey.in(other)).open(sealed, CONTEXT))
                .isInstanceOf(SealException.class)
                .hasMessageContaining("the key does not fit")
                .hasMessageContaining("sealed under key " + HexFormat.of().formatHex(sealed, 1, 5))
                .hasMessageContaining(other.toString());
    }

    @Test
    void theKeyFileIsMadeForItsOwnerOnlyAndLeavesNoDraft() throws Exception {
        Path file = folder.resolve("secret.key");
        SecretKey.in(file);
        assertThat(PosixFilePermissions.toString(Files.getPosixFilePermissions(file)))
                .isEqualTo("rw-------");
        assertThat(folder).isDirectoryNotContaining("glob:**.new");
        assertThat(Files.readString(file)).hasSize(45);
    }

    @Test
    void aKeyFileOpenToOthersIsRefusedWithTheMend() throws Exception {
        Path file = folder.resolve("secret.key");
        SecretKey.in(file);
        Files.setPosixFilePermissions(file, PosixFilePermissions.fromString("rw-r-----"));
        assertThatThrownBy(() -> SecretKey.in(file))
                .isInstanceOf(SetupException.class)
                .hasMessageContaining("chmod 600 " + file);
    }

    @Test
    void aMalformedKeyFileIsRefusedAndLeftAlone() throws Exception {
        for (String text : new String[] {"", "not base64!", "YWJj\n"}) {
            Path file = Files.createTempFile(folder, "bad", ".key");
            Files.writeString(file, text);
            assertThatThrownBy(() -> SecretKey.in(file))
                    .isInstanceOf(SetupException.class)
                    .hasMessageContaining(file + " must hold 32 bytes in base64");
            assertThat(file).hasContent(text);
        }
    }
}
