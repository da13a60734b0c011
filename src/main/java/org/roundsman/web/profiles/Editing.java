package org.roundsman.web.profiles;

import jakarta.enterprise.context.RequestScoped;
import java.util.List;
import java.util.Optional;
import org.roundsman.profiles.ProfileVersion;
import org.roundsman.profiles.ProfilesInUse;
import org.roundsman.profiles.StoredWalk;
import org.roundsman.profiles.StoredWalks;
import org.roundsman.profiles.TextDifference;
import org.roundsman.profiles.Workbench;
import org.roundsman.profiles.WrittenProfile;
import org.roundsman.profiles.WrittenProfiles;
import org.roundsman.snmp.ProfileException;
import org.roundsman.web.page.Faults;
import org.roundsman.web.page.Visitor;

/** Makes the editor's view. */
@RequestScoped
class Editing {

    private final WrittenProfiles written;
    private final ProfilesInUse inUse;
    private final StoredWalks walks;
    private final Workbench bench;
    private final Visitor visitor;

    Editing(WrittenProfiles written, ProfilesInUse inUse, StoredWalks walks, Workbench bench, Visitor visitor) {
        this.written = written;
        this.inUse = inUse;
        this.walks = walks;
        this.bench = bench;
        this.visitor = visitor;
    }

    ProfilesInUse inUse() {
        return inUse;
    }

    /** The sysObjectID in a stored walk; empty when there is none. */
    String objectId(long walk) {
        return walks.find(visitor.scope(), walk).map(StoredWalk::objectId).orElse("");
    }

    EditorView view(EditorForm form) {
        Optional<WrittenProfile> profile = written.find(form.profileId());
        String heading = profile.map(p -> "Change " + p.name()).orElse("Write a profile");
        String action = profile.map(p -> "/profiles/" + p.id()).orElse("/profiles");
        Checked checked = Checked.of(form.lines(), inUse);
        return new EditorView(
                heading, action, form, checked, walks.all(visitor.scope()), null, "", Faults.NONE, List.of(), 0);
    }

    /** The view with what the text makes of the chosen walk. */
    EditorView tried(EditorForm form) {
        EditorView view = view(form);
        Optional<StoredWalk> walk = walks.find(visitor.scope(), form.walkId());
        if (walk.isEmpty()) {
            return view.with(null, "Choose a walk to try it on.");
        }
        try {
            String name = WrittenProfiles.nameIn(form.lines()).orElse("");
            return view.with(
                    Tried.of(
                            walk.get(), bench.read(walk.get()), bench.read(walk.get(), bench.with(form.lines())), name),
                    "");
        } catch (ProfileException e) {
            return view.with(null, "It has faults: mend them first.");
        }
    }

    /** The view with why it was not saved; with what somebody else saved meanwhile. */
    EditorView refused(EditorForm form, Faults wrong) {
        EditorView view = view(form);
        Optional<ProfileVersion> latest = wrong.in("basedOn")
                ? written.versions(form.profileId()).stream().findFirst()
                : Optional.empty();
        return new EditorView(
                view.heading(),
                view.action(),
                form,
                view.checked(),
                view.walks(),
                null,
                "",
                wrong,
                latest.map(theirs -> TextDifference.between(theirs.text(), form.lines()))
                        .orElse(List.of()),
                latest.map(ProfileVersion::number).orElse(0));
    }
}
