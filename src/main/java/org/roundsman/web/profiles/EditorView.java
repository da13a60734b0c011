package org.roundsman.web.profiles;

import java.util.List;
import org.roundsman.profiles.StoredWalk;
import org.roundsman.profiles.TextDifference;
import org.roundsman.web.page.Faults;

/**
 * The editor.
 *
 * @param action where it is saved
 * @param walks to try it on
 * @param tried what came of it, or null
 * @param untried why it could not be tried, or empty
 * @param wrong why it was not saved
 * @param theirs what somebody else saved meanwhile, against what is being saved; or empty
 * @param latest number of that version, to go on from
 */
record EditorView(
        String heading,
        String action,
        EditorForm form,
        Checked checked,
        List<StoredWalk> walks,
        Tried tried,
        String untried,
        Faults wrong,
        List<TextDifference.Line> theirs,
        int latest) {

    EditorView with(Tried result, String reason) {
        return new EditorView(heading, action, form, checked, walks, result, reason, wrong, theirs, latest);
    }

    /** The version that the next save goes on from: the other person's once it was shown. */
    public String basedOn() {
        return theirs.isEmpty() ? form.basedOn() == null ? "" : form.basedOn() : String.valueOf(latest);
    }

    public boolean picked(StoredWalk walk) {
        return walk.id() == form.walkId();
    }
}
