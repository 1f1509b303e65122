namespace Abaxial.Tests.Weighing;

public sealed class CaseReaderRefusalTests
{
    private const string Leaves = "leaf, stem, fruit, flower, whole-plant, petiole, calyx, root";
    private const string Spores = "lemon-shaped-sporangia, oval-in-grape-clusters";

    [Theory]
    [InlineData("""["abaxial-case/1"]""", "", """["abaxial-case/1"]""", "an object")]
    [InlineData("null", "", "null", "an object")]
    [InlineData("""{"host":"tomato","looks":[]}""", "/format", "(missing)", "abaxial-case/1")]
    [InlineData("""{"format":"abaxial-case/2","farm":"x"}""", "/format", "abaxial-case/2", "abaxial-case/1")]
    [InlineData("""{"format":1,"host":"tomato","looks":[]}""", "/format", "1", "abaxial-case/1")]
    [InlineData("""{"format":"abaxial-case/1","looks":[]}""", "/host", "(missing)", "tomato, potato")]
    [InlineData("""{"format":"abaxial-case/1","host":"pepper","looks":[]}""", "/host", "pepper", "tomato, potato")]
    [InlineData("""{"format":"abaxial-case/1","host":"Tomato","looks":[]}""", "/host", "Tomato", "tomato, potato")]
    [InlineData("""{"format":"abaxial-case/1","host":"tomato"}""", "/looks", "(missing)", "an array")]
    [InlineData("""{"format":"abaxial-case/1","host":"tomato","looks":{}}""", "/looks", "{}", "an array")]
    [InlineData("""{"format":"abaxial-case/1","host":"tomato","looks":[null]}""", "/looks/0", "null", "an object")]
    [InlineData("""{"format":"abaxial-case/1","host":"tomato","looks":[],"a/b~c":1}""", "/a~1b~0c", "a/b~c", "format, host, system, stage, purpose, noticed, place, priorFactors, looks")]
    public void The_frame_of_a_case_is_checked(string text, string at, string found, string accepted) => Refused(text, at, found, accepted);

    [Theory]
    [InlineData("""  "system":"orchard"  """, "/system", "orchard", "field, garden, high-tunnel, greenhouse, nursery-or-retail, storage")]
    [InlineData("""  "system":""  """, "/system", "\"\"", "field, garden, high-tunnel, greenhouse, nursery-or-retail, storage")]
    [InlineData("""  "system":null  """, "/system", "null", "field, garden, high-tunnel, greenhouse, nursery-or-retail, storage")]
    [InlineData("""  "stage":"ripe"  """, "/stage", "ripe", "seed-tuber, seedling, vegetative, flowering, fruiting, senescing, harvested")]
    [InlineData("""  "purpose":"export"  """, "/purpose", "export", "home, market, seed, nursery")]
    [InlineData("""  "noticed":"14.7.2026"  """, "/noticed", "14.7.2026", "a date as 2026-07-14")]
    [InlineData("""  "noticed":"2026-02-30"  """, "/noticed", "2026-02-30", "a date as 2026-07-14")]
    [InlineData("""  "noticed":20260714  """, "/noticed", "20260714", "a date as 2026-07-14")]
    [InlineData("""  "place":"here"  """, "/place", "\"here\"", "an object")]
    [InlineData("""  "place":{"latitude":55}  """, "/place/longitude", "(missing)", "a number from -180 to 180")]
    [InlineData("""  "place":{"longitude":-4}  """, "/place/latitude", "(missing)", "a number from -90 to 90")]
    [InlineData("""  "place":{"latitude":90.01,"longitude":0}  """, "/place/latitude", "90.01", "a number from -90 to 90")]
    [InlineData("""  "place":{"latitude":"55","longitude":0}  """, "/place/latitude", "\"55\"", "a number from -90 to 90")]
    [InlineData("""  "place":{"latitude":0,"longitude":-181}  """, "/place/longitude", "-181", "a number from -180 to 180")]
    [InlineData("""  "place":{"latitude":0,"longitude":0,"uncertaintyMeters":-1}  """, "/place/uncertaintyMeters", "-1", "a number of at least 0")]
    [InlineData("""  "place":{"latitude":0,"longitude":0,"uncertaintyMeters":1e400}  """, "/place/uncertaintyMeters", "1e400", "a number of at least 0")]
    [InlineData("""  "place":{"latitude":0,"longitude":0,"farm":"x"}  """, "/place/farm", "farm", "latitude, longitude, uncertaintyMeters")]
    public void What_is_known_of_the_crop_is_checked(string member, string at, string found, string accepted) =>
        Refused(CaseText.With($"\"looks\":[],{member.Trim()}"), at, found, accepted);

    [Theory]
    [InlineData("""{"factor":2,"reason":"weather"}""", "/priorFactors/0/cause", "(missing)", null)]
    [InlineData("""{"cause":"late-blite","factor":2,"reason":"weather"}""", "/priorFactors/0/cause", "late-blite", null)]
    [InlineData("""{"cause":"blackleg","factor":2,"reason":"weather"}""", "/priorFactors/0/cause", "blackleg", null)]
    [InlineData("""{"cause":"late-blight","reason":"weather"}""", "/priorFactors/0/factor", "(missing)", "a number from 0.2 to 10")]
    [InlineData("""{"cause":"late-blight","factor":0.1,"reason":"weather"}""", "/priorFactors/0/factor", "0.1", "a number from 0.2 to 10")]
    [InlineData("""{"cause":"late-blight","factor":11,"reason":"weather"}""", "/priorFactors/0/factor", "11", "a number from 0.2 to 10")]
    [InlineData("""{"cause":"late-blight","factor":2}""", "/priorFactors/0/reason", "(missing)", "text that is not blank")]
    [InlineData("""{"cause":"late-blight","factor":2,"reason":" "}""", "/priorFactors/0/reason", "\" \"", "text that is not blank")]
    [InlineData("""{"cause":"late-blight","factor":2,"reason":"weather","weight":1}""", "/priorFactors/0/weight", "weight", "cause, factor, reason")]
    [InlineData("""{"cause":"late-blight","factor":2,"reason":"weather"},{"cause":"late-blight","factor":2,"reason":"weather"}""", "/priorFactors/1/reason", "weather", "each reason once for late-blight")]
    [InlineData("""{"cause":"late-blight","factor":4,"reason":"weather"},{"cause":"late-blight","factor":5,"reason":"neighbours"}""", "/priorFactors/1/factor", "20 as the product for late-blight", "a product from 0.2 to 10")]
    public void Prior_factors_are_checked(string factors, string at, string found, string? accepted) =>
        Refused(CaseText.With($"\"looks\":[],\"priorFactors\":[{factors}]"), at, found, accepted);

    [Theory]
    [InlineData("""{"state":"present","how":"hand-lens"}""", "/looks/0/character", "(missing)", null)]
    [InlineData("""{"character":"pycnidium","state":"present","how":"hand-lens"}""", "/looks/0/character", "pycnidium", null)]
    [InlineData("""{"character":"tuber-flesh","state":"clean","how":"cut"}""", "/looks/0/character", "tuber-flesh", null)]
    [InlineData("""{"character":"pycnidia","state":"present"}""", "/looks/0/how", "(missing)", "naked-eye, hand-lens, microscope, asked, photo")]
    [InlineData("""{"character":"pycnidia","state":"present","how":"eye"}""", "/looks/0/how", "eye", "naked-eye, hand-lens, microscope, asked, photo")]
    [InlineData("""{"character":"spores-seen","state":"none","how":"photo"}""", "/looks/0/how", "photo", "microscope")]
    [InlineData("""{"character":"pycnidia","state":"present","how":"hand-lens","colour":"black"}""", "/looks/0/colour", "colour", "character, state, states, values, of, from, how, surface, hours, by, observer, at, note")]
    [InlineData("""{"character":"pycnidia","state":"present","how":"hand-lens","by":"farmer"}""", "/looks/0/by", "farmer", "grower, scout, diagnostician, specialist")]
    [InlineData("""{"character":"pycnidia","state":"present","how":"hand-lens","observer":7}""", "/looks/0/observer", "7", "text that is not blank")]
    [InlineData("""{"character":"pycnidia","state":"present","how":"hand-lens","observer":""}""", "/looks/0/observer", "\"\"", "text that is not blank")]
    [InlineData("""{"character":"pycnidia","state":"present","how":"hand-lens","at":"noon"}""", "/looks/0/at", "noon", "a date as 2026-07-14, a date and time as 2026-07-14T09:30Z")]
    [InlineData("""{"character":"pycnidia","state":"present","how":"hand-lens","note":["x"]}""", "/looks/0/note", "[\"x\"]", "text")]
    public void A_look_names_what_was_looked_at_and_how(string look, string at, string found, string? accepted) => Refused(CaseText.WithLooks(look), at, found, accepted);

    [Theory]
    [InlineData("""{"character":"concentric-rings","how":"photo"}""", "/looks/0/state", "(missing)", "clear, faint, absent")]
    [InlineData("""{"character":"concentric-rings","state":"ringed","how":"photo"}""", "/looks/0/state", "ringed", "clear, faint, absent")]
    [InlineData("""{"character":"concentric-rings","state":["clear"],"how":"photo"}""", "/looks/0/state", "[\"clear\"]", "clear, faint, absent")]
    [InlineData("""{"character":"concentric-rings","states":["clear"],"how":"photo"}""", "/looks/0/states", "states", "state")]
    [InlineData("""{"character":"concentric-rings","values":[1],"how":"photo"}""", "/looks/0/values", "values", "state")]
    [InlineData("""{"character":"organs-affected","how":"photo"}""", "/looks/0/state", "(missing)", Leaves)]
    [InlineData("""{"character":"organs-affected","state":"tuber","how":"photo"}""", "/looks/0/state", "tuber", Leaves)]
    [InlineData("""{"character":"organs-affected","states":["leaf","tuber"],"how":"photo"}""", "/looks/0/states/1", "tuber", Leaves)]
    [InlineData("""{"character":"organs-affected","states":["leaf",5],"how":"photo"}""", "/looks/0/states/1", "5", Leaves)]
    [InlineData("""{"character":"organs-affected","states":["leaf","stem","leaf"],"how":"photo"}""", "/looks/0/states/2", "leaf", "each state once")]
    [InlineData("""{"character":"organs-affected","states":["unsure","leaf"],"how":"photo"}""", "/looks/0/states/0", "unsure", "unsure alone, the others without it")]
    [InlineData("""{"character":"wilting","states":["none"],"how":"photo"}""", "/looks/0/states", "states", "state")]
    [InlineData("""{"character":"fruit-growth","states":["white-down","none"],"how":"hand-lens"}""", "/looks/0/states/1", "none", "none alone, the others without it")]
    [InlineData("""{"character":"fruit-growth","states":[],"how":"hand-lens"}""", "/looks/0/states", "[]", "an array of one state or more, none, white-down, gray-brown-fuzz, dark-velvet, pink-orange-slime, white-cotton")]
    [InlineData("""{"character":"fruit-growth","states":"none","how":"hand-lens"}""", "/looks/0/states", "\"none\"", "an array of one state or more, none, white-down, gray-brown-fuzz, dark-velvet, pink-orange-slime, white-cotton")]
    [InlineData("""{"character":"fruit-growth","state":"none","states":["none"],"how":"hand-lens"}""", "/looks/0", "state and states", "state alone, states alone")]
    [InlineData("""{"character":"fruit-growth","states":["none"],"values":[1],"how":"hand-lens"}""", "/looks/0", "states and values", "state alone, states alone")]
    public void What_was_seen_is_one_of_the_states(string look, string at, string found, string accepted) => Refused(CaseText.WithLooks(look), at, found, accepted);

    [Theory]
    [InlineData("", "/looks/0/values", "(missing)", "numbers over 0, unsure")]
    [InlineData(""" "state":"long", """, "/looks/0/state", "long", "unsure")]
    [InlineData(""" "state":"unsure","values":[1], """, "/looks/0", "state and values", "values alone, state alone")]
    [InlineData(""" "values":[], """, "/looks/0/values", "[]", "an array of one number over 0 or more")]
    [InlineData(""" "values":28.1, """, "/looks/0/values", "28.1", "an array of one number over 0 or more")]
    [InlineData(""" "values":[28.1,0], """, "/looks/0/values/1", "0", "a number over 0")]
    [InlineData(""" "values":[-0.0], """, "/looks/0/values/0", "-0.0", "a number over 0")]
    [InlineData(""" "values":[-3], """, "/looks/0/values/0", "-3", "a number over 0")]
    [InlineData(""" "values":[1e400], """, "/looks/0/values/0", "1e400", "a number over 0")]
    [InlineData(""" "values":[1e-400], """, "/looks/0/values/0", "1e-400", "a number over 0")]
    [InlineData(""" "values":["NaN"], """, "/looks/0/values/0", "\"NaN\"", "a number over 0")]
    [InlineData(""" "values":["28"], """, "/looks/0/values/0", "\"28\"", "a number over 0")]
    [InlineData(""" "values":[null], """, "/looks/0/values/0", "null", "a number over 0")]
    public void What_was_measured_is_finite_and_over_zero(string seen, string at, string found, string accepted) =>
        Refused(CaseText.WithLooks($$"""{"character":"spore-length","of":"lemon-shaped-sporangia",{{seen}}"how":"microscope"}"""), at, found, accepted);

    [Theory]
    [InlineData("""{"character":"fruit-growth","state":"none","how":"hand-lens","surface":"damp"}""", "/looks/0/surface", "damp", "dry-day, wet-morning, bagged-in-transit, moist-chamber")]
    [InlineData("""{"character":"pycnidia","state":"absent","how":"hand-lens","surface":"dry-day"}""", "/looks/0/surface", "dry-day", "leave it out")]
    [InlineData("""{"character":"leaf-underside-growth-place","state":"at-center","how":"moist-chamber","surface":"moist-chamber"}""", "/looks/0/surface", "moist-chamber", "leave it out")]
    [InlineData("""{"character":"fruit-growth","state":"none","how":"moist-chamber","surface":"dry-day"}""", "/looks/0/surface", "dry-day", "moist-chamber")]
    [InlineData("""{"character":"fruit-growth","state":"none","how":"hand-lens","hours":24}""", "/looks/0/hours", "24", "leave it out, how or surface moist-chamber")]
    [InlineData("""{"character":"fruit-growth","state":"none","how":"moist-chamber","hours":0}""", "/looks/0/hours", "0", "a number of hours over 0 and at most 1000")]
    [InlineData("""{"character":"fruit-growth","state":"none","how":"moist-chamber","hours":1000.5}""", "/looks/0/hours", "1000.5", "a number of hours over 0 and at most 1000")]
    [InlineData("""{"character":"fruit-growth","state":"none","how":"moist-chamber","hours":1e999}""", "/looks/0/hours", "1e999", "a number of hours over 0 and at most 1000")]
    [InlineData("""{"character":"fruit-growth","state":"none","how":"moist-chamber","hours":"24"}""", "/looks/0/hours", "\"24\"", "a number of hours over 0 and at most 1000")]
    public void Surface_and_hours_belong_to_looks_for_growth(string look, string at, string found, string accepted) => Refused(CaseText.WithLooks(look), at, found, accepted);

    [Theory]
    [InlineData("""{"character":"pycnidia","state":"absent","how":"hand-lens","of":"lemon-shaped-sporangia"}""", "/looks/0/of", "lemon-shaped-sporangia", "leave it out")]
    [InlineData("""{"character":"sporangium-stalk-length","values":[2],"how":"microscope","of":"oval-in-grape-clusters"}""", "/looks/0/of", "oval-in-grape-clusters", "lemon-shaped-sporangia")]
    [InlineData("""{"character":"spore-length","values":[20],"how":"microscope","of":"none"}""", "/looks/0/of", "none", null)]
    [InlineData("""{"character":"spore-length","values":[20],"how":"microscope","of":"round"}""", "/looks/0/of", "round", null)]
    [InlineData("""{"character":"spore-length","values":[20],"how":"microscope"}""", "/looks/0/of", "(missing)", null)]
    [InlineData("""{"character":"spore-length","values":[20],"how":"microscope"},{"character":"spores-seen","state":"none","how":"microscope"}""", "/looks/0/of", "(missing)", null)]
    [InlineData("""{"character":"spore-length","values":[20],"how":"microscope"},{"character":"spores-seen","states":["oval-in-grape-clusters","lemon-shaped-sporangia"],"how":"microscope"}""", "/looks/0/of", "(missing)", Spores)]
    [InlineData("""{"character":"pycnidia","state":"absent","how":"hand-lens","from":"leaf-spot"}""", "/looks/0/from", "leaf-spot", "leave it out")]
    [InlineData("""{"character":"bacterial-streaming","state":"absent","how":"microscope","from":"fruit"}""", "/looks/0/from", "fruit", "leaf-spot, stem-vascular, tuber-ring, rotted-tissue")]
    public void What_was_measured_and_where_it_came_from_must_fit(string looks, string at, string found, string? accepted) => Refused(CaseText.WithLooks(looks), at, found, accepted);

    [Theory]
    [InlineData("""{"format":"abaxial-case/1","host":"tomato","host":"potato","looks":[]}""", "/host", "host")]
    [InlineData("""{"format":"abaxial-case/1","host":"tomato","looks":[],"h\u006fst":"tomato"}""", "/host", "host")]
    [InlineData("""{"format":"abaxial-case/1","host":"tomato","looks":[],"place":{"latitude":1,"longitude":1,"latitude":1}}""", "/place/latitude", "latitude")]
    [InlineData("""{"format":"abaxial-case/1","host":"tomato","looks":[{"character":"pycnidia","state":"absent","how":"cut","how":"hand-lens"}]}""", "/looks/0/how", "how")]
    public void A_name_stands_once_in_an_object(string text, string at, string found) => Refused(text, at, found, "each name once in an object");

    [Fact]
    public void An_unknown_character_is_answered_with_those_of_the_host()
    {
        var problem = CaseText.TheProblem(CaseText.WithLooks("""{"character":"halo","state":"present","how":"naked-eye"}"""));
        Assert.Equal(CaseText.Knowledge.Characters.Where(character => character.AppliesTo("tomato")).Select(character => character.Id), problem.Accepted);
    }

    [Fact]
    public void An_unknown_cause_is_answered_with_those_of_the_host()
    {
        var problem = CaseText.TheProblem(CaseText.With("""  "looks":[],"priorFactors":[{"cause":"halo","factor":2,"reason":"weather"}]  """, "potato"));
        Assert.Equal(CaseText.Knowledge.Causes.Where(cause => cause.Hosts.Contains("potato")).Select(cause => cause.Id), problem.Accepted);
    }

    [Fact]
    public void Spores_measured_without_any_recorded_are_answered_with_all_kinds()
    {
        var problem = CaseText.TheProblem(CaseText.WithLooks("""{"character":"spore-width","values":[14],"how":"microscope"}"""));
        Assert.Equal(CaseText.Knowledge.FindCharacter("spores-seen")!.States.Remove("none"), problem.Accepted);
    }

    [Fact]
    public void One_refusal_names_every_problem()
    {
        var reading = CaseText.Read(CaseText.With("""
            "system":"orchard","place":{"latitude":99,"longitude":0},"looks":[
              {"character":"pycnidia","state":"many","how":"smell"},{"character":"spores-seen","state":"round","how":"microscope"},{"character":"spore-length","values":[20],"how":"microscope"}]
            """));
        Assert.Equal(["/system", "/place/latitude", "/looks/0/how", "/looks/0/state", "/looks/1/state"], reading.Problems.Select(problem => problem.At));
    }

    [Fact]
    public void Under_an_unknown_host_looks_are_judged_by_all_that_is_known()
    {
        string text = """{"format":"abaxial-case/1","host":"pepper","looks":[{"character":"tuber-flesh","state":"clean","how":"cut"},{"character":"organs-affected","states":["tuber","fruit"],"how":"asked"}]}""";
        Assert.Equal("/host", CaseText.TheProblem(text).At);
    }

    private static void Refused(string text, string at, string found, string? accepted)
    {
        var problem = CaseText.TheProblem(text);
        Assert.Equal((at, found), (problem.At, problem.Found));
        Assert.NotEmpty(problem.Accepted);
        if (accepted is not null) Assert.Equal(accepted, string.Join(", ", problem.Accepted));
    }
}
