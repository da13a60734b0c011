package org.roundsman.web.topology;

import jakarta.ws.rs.FormParam;

/** What the form of a device's switch port sends. */
public class PortForm {

    /** Id of the device above, a colon and the port's number; without a number the port is not known. */
    @FormParam("place")
    public String place = "";

    @FormParam("note")
    public String note = "";
}
