using Abaxial.Knowledge;
using Abaxial.Weighing;

namespace Abaxial.Tests.Weighing;

public sealed class CaseReaderAcceptanceTests
{
    [Fact]
    public void The_example_of_the_interface_is_read_whole()
    {
        var read = CaseText.Accepted(CaseText.Example);

        Assert.Equal(("tomato", "high-tunnel", "fruiting", "market"), (read.Host, read.System, read.Stage, read.Purpose));
        Assert.Equal(new DateOnly(2026, 7, 14), read.Noticed);
        Assert.Equal(new Place(55.21, -4.02, 2000), read.Place);
        Assert.Equal(new PriorFactor(CaseText.Knowledge.Subject, 2.5, "21 days of weather at the nearest station"), Assert.Single(read.PriorFactors));
        Assert.Equal(["organs-affected", "leaf-underside-growth", "pycnidia", "concentric-rings", "spore-length"], read.Looks.Select(look => look.Character.Id));
        Assert.Equal([Way.NakedEye, Way.HandLens, Way.HandLens, Way.Photo, Way.Microscope], read.Looks.Select(look => look.How));
        Assert.Equal([Observer.Scout, Observer.Diagnostician, Observer.Diagnostician, Observer.Grower, Observer.Diagnostician], read.Looks.Select(look => look.By));
        Assert.Equal([false, false, false, true, false], read.Looks.Select(look => look.IsUnsure));
        Assert.Equal("s-07", read.Looks[0].Person);
        Assert.Equal([28.1, 31.0, 33.4], read.Looks[4].Values);
        Assert.Equal("lemon-shaped-sporangia", read.Looks[4].Facet);
    }

    [Fact]
    public void A_case_may_hold_nothing_but_its_host()
    {
        var read = CaseText.Accepted(CaseText.With("\"looks\":[]"));
        Assert.Empty(read.Looks);
        Assert.Equal((null, null, null, null, null), (read.System, read.Stage, read.Purpose, read.Noticed, read.Place));
    }

    [Fact]
    public void A_grower_looked_where_nothing_is_said() =>
        Assert.Equal(Observer.Grower, CaseText.AcceptedLook("""{"character":"pycnidia","state":"absent","how":"photo"}""").By);

    [Theory]
    [InlineData("photo")]
    [InlineData("asked")]
    public void What_the_naked_eye_sees_may_be_photographed_and_told(string how) =>
        Assert.Equal(how, CaseText.AcceptedLook($$"""{"character":"shot-holes","state":"present","how":"{{how}}"}""").How.Word());

    [Fact]
    public void State_is_short_for_one_of_several_states()
    {
        var brief = CaseText.AcceptedLook("""{"character":"organs-affected","state":"stem","how":"asked"}""");
        var full = CaseText.AcceptedLook("""{"character":"organs-affected","states":["stem"],"how":"asked"}""");
        Assert.True(brief.IsSameAs(full));
    }

    [Fact]
    public void States_come_in_the_order_of_the_knowledge()
    {
        var look = CaseText.AcceptedLook("""{"character":"organs-affected","states":["root","leaf","stem"],"how":"asked"}""");
        Assert.Equal(["leaf", "stem", "root"], look.States.Select(state => look.Character.States[state]));
    }

    [Fact]
    public void A_state_of_one_host_is_accepted_there() =>
        Assert.Single(CaseText.Accepted(CaseText.With("\"looks\":[{\"character\":\"organs-affected\",\"state\":\"tuber\",\"how\":\"asked\"}]", "potato")).Looks);

    [Fact]
    public void Unsure_is_accepted_for_every_character_in_every_way_it_can_be_looked_at()
    {
        foreach (var character in CaseText.Knowledge.Characters)
        {
            string host = character.AppliesTo("tomato") ? "tomato" : "potato";
            foreach (var way in character.Ways)
            {
                var read = CaseText.Accepted(CaseText.With($$"""  "looks":[{"character":"{{character.Id}}","state":"unsure","how":"{{way.Word()}}"}]  """, host));
                Assert.True(read.Looks[0].IsUnsure);
                Assert.Empty(read.Looks[0].States);
            }
        }
    }

    [Fact]
    public void Unsure_may_stand_alone_among_states() =>
        Assert.True(CaseText.AcceptedLook("""{"character":"organs-affected","states":["unsure"],"how":"asked"}""").IsUnsure);

    [Theory]
    [InlineData("""{"character":"fruit-growth","state":"none","how":"hand-lens"}""", Surface.DryDay)]
    [InlineData("""{"character":"fruit-growth","state":"none","how":"hand-lens","surface":"wet-morning"}""", Surface.WetMorning)]
    [InlineData("""{"character":"fruit-growth","state":"none","how":"moist-chamber"}""", Surface.MoistChamber)]
    [InlineData("""{"character":"fruit-growth","state":"none","how":"moist-chamber","surface":"moist-chamber","hours":72}""", Surface.MoistChamber)]
    [InlineData("""{"character":"fruit-growth","state":"none","how":"hand-lens","surface":"moist-chamber","hours":72}""", Surface.MoistChamber)]
    [InlineData("""{"character":"leaf-underside-growth-place","state":"at-center","how":"moist-chamber","hours":24}""", null)]
    [InlineData("""{"character":"pycnidia","state":"absent","how":"hand-lens"}""", null)]
    public void The_surface_is_settled_where_the_character_has_surfaces(string look, Surface? surface) => Assert.Equal(surface, CaseText.AcceptedLook(look).Surface);

    [Theory]
    [InlineData("0.5", 0.5)]
    [InlineData("1000", 1000)]
    public void Hours_are_kept(string hours, double kept) =>
        Assert.Equal(kept, CaseText.AcceptedLook($$"""{"character":"fruit-growth","state":"none","how":"moist-chamber","hours":{{hours}}}""").Hours);

    [Fact]
    public void Spores_measured_are_of_the_one_kind_that_was_recorded_wherever_it_stands()
    {
        var read = CaseText.Accepted(CaseText.WithLooks(
            """{"character":"spore-length","values":[28],"how":"microscope"}""",
            """{"character":"spores-seen","states":["lemon-shaped-sporangia"],"how":"microscope"}""",
            """{"character":"spores-seen","state":"none","how":"microscope","by":"scout"}""",
            """{"character":"spores-seen","state":"unsure","how":"microscope"}"""));
        Assert.Equal("lemon-shaped-sporangia", read.Looks[0].Facet);
    }

    [Theory]
    [InlineData("""{"character":"sporangium-stalk-length","values":[2],"how":"microscope"}""")]
    [InlineData("""{"character":"sporangium-stalk-length","values":[2],"how":"microscope","of":"lemon-shaped-sporangia"}""")]
    public void A_measure_that_belongs_to_one_kind_needs_none(string look) => Assert.Null(CaseText.AcceptedLook(look).Facet);

    [Fact]
    public void Streaming_says_where_it_came_from() =>
        Assert.Equal("tuber-ring", CaseText.AcceptedLook("""{"character":"bacterial-streaming","state":"present","how":"cut","from":"tuber-ring"}""").Facet);

    [Theory]
    [InlineData("2026-07-14")]
    [InlineData("2026-07-14T09:30")]
    [InlineData("2026-07-14T09:30:15")]
    [InlineData("2026-07-14T09:30:15.123456789Z")]
    [InlineData("2026-07-14T09:30:15,5+02:00")]
    [InlineData("2026-07-14T23:59Z")]
    [InlineData("2026-07-14T09:30-11")]
    public void Times_are_kept_as_they_are_written(string time) =>
        Assert.Equal(time, CaseText.AcceptedLook($$"""{"character":"pycnidia","state":"absent","how":"photo","at":"{{time}}"}""").At);

    [Theory]
    [InlineData("2026-7-14")]
    [InlineData("2026-07-14 09:30")]
    [InlineData("2026-07-14T")]
    [InlineData("2026-07-14T9:30")]
    [InlineData("2026-07-14T24:00")]
    [InlineData("2026-07-14T09:60")]
    [InlineData("2026-07-14T09:30:60")]
    [InlineData("2026-07-14T09:30:15.")]
    [InlineData("2026-07-14T09:30Z1")]
    [InlineData("2026-07-14T09:30+2")]
    [InlineData("2026-07-14T09:30+02:0")]
    [InlineData("2026-07-14T-09:30")]
    [InlineData("２０２６-07-14")]
    public void Other_times_are_refused(string time) =>
        Assert.Equal("/looks/0/at", CaseText.TheProblem(CaseText.WithLooks($$"""{"character":"pycnidia","state":"absent","how":"photo","at":"{{time}}"}""")).At);

    [Fact]
    public void Factors_may_multiply_to_the_bound()
    {
        var read = CaseText.Accepted(CaseText.With("""
            "looks":[],"priorFactors":[{"cause":"late-blight","factor":1.1,"reason":"a"},{"cause":"late-blight","factor":1.1,"reason":"b"},
            {"cause":"late-blight","factor":8.264462809917356,"reason":"c"},{"cause":"early-blight","factor":0.2,"reason":"a"}]
            """));
        Assert.Equal(4, read.PriorFactors.Length);
    }

    [Fact]
    public void Contradictory_looks_and_bench_results_are_weighed_and_not_refused()
    {
        var read = CaseText.Accepted(CaseText.WithLooks(
            """{"character":"concentric-rings","state":"clear","how":"photo"}""",
            """{"character":"concentric-rings","state":"absent","how":"photo"}""",
            """{"character":"pcr-p-infestans","state":"positive","how":"bench-test","by":"specialist"}""",
            """{"character":"pcr-p-infestans","state":"negative","how":"bench-test","by":"specialist"}""",
            """{"character":"culture","state":"pythium","how":"bench-test","by":"specialist"}"""));
        Assert.Equal(5, read.Looks.Length);
    }

    [Fact]
    public void The_same_look_twice_is_kept_twice()
    {
        const string Look = """{"character":"concentric-rings","state":"clear","how":"photo"}""";
        var read = CaseText.Accepted(CaseText.WithLooks(Look, Look));
        Assert.True(read.Looks[0].IsSameAs(read.Looks[1]));
    }

    [Fact]
    public void Text_may_hold_any_character_that_is_one()
    {
        var look = CaseText.AcceptedLook("""{"character":"pycnidia","state":"absent","how":"photo","observer":"Ł-\ud83c\udf45","note":""}""");
        Assert.Equal(("Ł-🍅", ""), (look.Person, look.Note));
    }
}
