package org.roundsman.boot;

import static org.assertj.core.api.Assertions.assertThat;

import com.microsoft.playwright.Page;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.roundsman.testing.Program;
import org.roundsman.web.Screen;

/** Signs the first owner in, with the password that the start showed once. */
final class FirstSignIn {

    private FirstSignIn() {}

    /** Leaves the screen on the fleet view, with a password of the owner's own. */
    static void on(Screen screen, Program program) {
        Matcher shown =
                Pattern.compile("sign in as \"(.+)\" with the password (\\S+)").matcher(program.output());
        assertThat(shown.find()).as(program.output()).isTrue();
        screen.signIn(shown.group(1), shown.group(2));
        Page page = screen.page();
        assertThat(page.url()).endsWith("/password");
        page.fill("#old", shown.group(2));
        page.fill("#password", "a lantern on the pier");
        page.fill("#again", "a lantern on the pier");
        page.click("main button");
        page.navigate(page.url().replaceAll("/password.*", "/"));
    }
}
