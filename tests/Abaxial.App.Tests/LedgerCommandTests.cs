using System.Text;
using Abaxial.Cli;
using Microsoft.Data.Sqlite;

namespace Abaxial.App.Tests;

public sealed class LedgerCommandTests : IAsyncDisposable
{
    private static readonly string Cases = Path.Combine(AppContext.BaseDirectory, "cases");

    private readonly TestStore store = new(StoreKind.Sqlite);

    public ValueTask DisposeAsync() => store.DisposeAsync();

    [Fact]
    public void The_demo_s_cases_are_taken_in_listed_shown_and_check_clean()
    {
        var files = Directory.GetFiles(Cases).Order(StringComparer.Ordinal).ToArray();
        var taken = Run(["ledger", "import", .. files]);
        Assert.Equal((0, ""), (taken.Code, taken.Error));
        Assert.Equal(files.Length, Lines(taken.Out).Length);

        var listed = Run("ledger", "list");
        Assert.Equal(files.Length, Lines(listed.Out).Length);
        Assert.Contains("likely     Late blight", Lines(listed.Out)[0], StringComparison.Ordinal);

        string number = Lines(taken.Out)[0][..9];
        Assert.Contains("leaf-underside-growth", Run("ledger", "show", number).Out, StringComparison.Ordinal);
        Assert.Equal(Run("ledger", "show", number).Out, Run("ledger", "show", Lines(taken.Out)[0][11..37]).Out);
        var check = Run("ledger", "check");
        Assert.Equal(0, check.Code);
        Assert.Matches(@"all\s+fits", check.Out);
    }

    [Fact]
    public void A_case_and_the_sample_made_of_it_get_one_answer()
    {
        foreach (string file in Directory.GetFiles(Cases))
        {
            string taken = Run("ledger", "import", file).Out;
            string answer = Run("weigh", file).Out, shown = Run("ledger", "show", taken[..9]).Out;
            string[] answered = Lines(answer)[1..];
            Assert.Equal(answered, Lines(shown)[^answered.Length..]);
        }
    }

    [Fact]
    public void A_refused_case_says_why_and_the_others_are_taken_in()
    {
        File.WriteAllText(Path.Combine(store.Root, "bad.json"), """{"format":"abaxial-case/1","host":"oak","looks":[]}""");
        var taken = Run("ledger", "import", "bad.json", Directory.GetFiles(Cases)[0]);
        Assert.Equal(2, taken.Code);
        Assert.Contains("/host", taken.Error, StringComparison.Ordinal);
        Assert.Single(Lines(taken.Out));
    }

    [Fact]
    public void A_check_that_finds_something_names_it_and_ends_with_2()
    {
        Run("ledger", "import", Directory.GetFiles(Cases)[0]);
        using (var connection = new SqliteConnection($"Data Source={Path.Combine(store.Folder, "ledger.db")};Pooling=False"))
        {
            connection.Open();
            using var command = connection.CreateCommand();
            command.CommandText = "UPDATE entries SET Text = replace(Text, 'import', 'export') WHERE Place = 3";
            command.ExecuteNonQuery();
        }

        var check = Run("ledger", "check");
        Assert.Equal(2, check.Code);
        Assert.Matches(@"^entry [0-9A-Z]{26}: Its content is not what", check.Out);
    }

    [Fact]
    public void A_backup_is_restored_into_a_new_folder_and_into_no_other()
    {
        Run("ledger", "import", Directory.GetFiles(Cases)[0]);
        Assert.Equal(0, Run("backup", "monday.tar").Code);
        Assert.Equal(64, Run("backup", "monday.tar").Code);
        Assert.Equal(64, Run("restore", "monday.tar", "--store", "store").Code);
        Assert.Equal(64, Run("restore", "tuesday.tar", "--store", "again").Code);
        var restored = Run("restore", "monday.tar", "--store", "again");
        Assert.Equal((0, ""), (restored.Code, restored.Error));
        Assert.Equal(Run("ledger", "list").Out, Run("ledger", "list", "--store", "again").Out);
    }

    [Theory]
    [InlineData("check")]
    [InlineData("list")]
    [InlineData("show", "26-0001-D")]
    public void Where_there_is_no_store_that_is_said(params string[] command)
    {
        var run = Run(["ledger", .. command]);
        Assert.Equal(64, run.Code);
        Assert.Contains("no store", run.Error, StringComparison.Ordinal);
        Assert.False(Directory.Exists(store.Folder));
    }

    [Theory]
    [InlineData("26-0002-D", "a digit is wrong")]
    [InlineData("26-0002-J", "no sample 26-0002-J")]
    public void A_number_with_a_wrong_digit_is_told_from_one_that_is_not_there(string number, string said)
    {
        Run("ledger", "import", Directory.GetFiles(Cases)[0]);
        var run = Run("ledger", "show", number);
        Assert.Equal(64, run.Code);
        Assert.Contains(said, run.Error, StringComparison.Ordinal);
    }

    private (int Code, string Out, string Error) Run(params string[] args)
    {
        using var output = new MemoryStream();
        using var error = new StringWriter();
        var terminal = new Terminal { In = Stream.Null, Out = output, Error = error, Folder = store.Root };
        int code = CommandLine.Run(args, terminal, WeighCommand.Create, LedgerCommand.Create, BackupCommand.Create, RestoreCommand.Create);
        return (code, Encoding.UTF8.GetString(output.ToArray()), error.ToString());
    }

    private static string[] Lines(string text) => text.Split('\n', StringSplitOptions.RemoveEmptyEntries);
}
