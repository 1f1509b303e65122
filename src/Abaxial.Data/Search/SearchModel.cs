using Microsoft.EntityFrameworkCore;

namespace Abaxial.Data.Search;

/// <summary>The tables of lists and search. The words themselves are in a table of each database's own kind: see <see cref="WordIndex"/>.</summary>
internal static class SearchModel
{
    public static void Configure(ModelBuilder model)
    {
        model.Entity<SampleRow>(sample =>
        {
            sample.ToTable("samples").IsMadeAnew().HasKey(row => row.Key);
            sample.Property(row => row.Key).ValueGeneratedNever();
            sample.HasIndex(row => row.Sample).IsUnique();
            sample.HasIndex(row => new { row.IsOpen, row.Waiting, row.Key });
        });
        model.Entity<SamplesMadeRow>(made =>
        {
            made.ToTable("samples_made").IsMadeAnew().HasKey(row => row.Id);
            made.Property(row => row.Id).ValueGeneratedNever();
        });
        model.Entity<SampleSealRow>(seal =>
        {
            seal.ToTable("sample_seals").IsMadeAnew().HasKey(row => new { row.Sha256, row.Sample });
            seal.HasIndex(row => row.Sample);
            seal.HasIndex(row => row.Person);
        });
        model.Entity<PersonWordRow>(word =>
        {
            word.ToTable("person_words").HasKey(row => new { row.Word, row.Person });
            word.HasIndex(row => row.Person);
        });
    }
}
