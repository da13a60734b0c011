package org.roundsman.demo.invent;

import java.util.List;

/** Word lists that names are made of. None of them is the name of a person, a firm or a place that exists. */
final class Words {

    static final List<String> FIRST = List.of(
            "Tansy", "Murkle", "Bramble", "Copper", "Dapple", "Elder", "Fennel", "Gorse", "Heron", "Juniper", "Kestrel",
            "Lichen", "Marrow", "Nettle", "Otter", "Plover", "Quince", "Russet", "Sorrel", "Teasel", "Umber", "Vetch",
            "Whin", "Yarrow", "Amber", "Burdock", "Clover", "Drift", "Ember", "Foxtail", "Glimmer", "Hollow");

    static final List<String> SECOND = List.of(
            "wick", "mere", "down", "holt", "combe", "thwaite", "garth", "stead", "fen", "croft", "dale", "hurst",
            "beck", "moor", "reach", "ness", "barrow", "knoll", "shaw", "lea");

    static final List<String> STREETS = List.of(
            "Pepperpot Lane",
            "Ropewalk Row",
            "Tinderbox Street",
            "Candlewick Yard",
            "Old Toll Road",
            "Lantern Hill",
            "Cooper's Wynd",
            "Millrace Quay",
            "Sundial Square",
            "Gooseberry Walk",
            "Clockhouse Rise",
            "Weir Bank");

    static final List<String> GIVEN = List.of(
            "Ansa", "Bero", "Cindrel", "Dovan", "Elspera", "Fenno", "Garlan", "Hespa", "Ilvar", "Jorra", "Kelwin",
            "Lumia", "Mardo", "Nivelle", "Orsan", "Perrin");

    static final List<String> FAMILY = List.of(
            "Fenwhistle",
            "Quillmark",
            "Tarnwater",
            "Mossgrave",
            "Larkenby",
            "Pellwether",
            "Oxbowe",
            "Candlefoot",
            "Thornapple",
            "Wexlade",
            "Bellweir",
            "Marshlight",
            "Hobgarth",
            "Ravensedge",
            "Silverloaf",
            "Underleaf");

    private Words() {}
}
