using Abaxial.Data.People;
using Abaxial.Data.Search;
using Microsoft.AspNetCore.Identity;
using Microsoft.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore.Storage.ValueConversion;

namespace Abaxial.Data;

/// <summary>The tables of the ledger, the same for every kind of database.</summary>
public abstract class LedgerContext(DbContextOptions options) : DbContext(options)
{
    public DbSet<EntryRow> Entries => Set<EntryRow>();

    public DbSet<ChainRow> Chains => Set<ChainRow>();

    public DbSet<SealedRow> SealedTexts => Set<SealedRow>();

    public DbSet<ErasureRow> Erasures => Set<ErasureRow>();

    public DbSet<NumberRow> Numbers => Set<NumberRow>();

    public DbSet<PhotographRow> Photographs => Set<PhotographRow>();

    public DbSet<StoreRow> Store => Set<StoreRow>();

    public DbSet<SampleRow> Samples => Set<SampleRow>();

    public DbSet<SampleSealRow> SampleSeals => Set<SampleSealRow>();

    public DbSet<PersonWordRow> PersonWords => Set<PersonWordRow>();

    public DbSet<Person> People => Set<Person>();

    public DbSet<IdentityUserPasskey<string>> Passkeys => Set<IdentityUserPasskey<string>>();

    public DbSet<SessionRow> Sessions => Set<SessionRow>();

    public DbSet<DeviceRow> Devices => Set<DeviceRow>();

    public DbSet<BenchRow> Benches => Set<BenchRow>();

    public DbSet<OneTimeCodeRow> OneTimeCodes => Set<OneTimeCodeRow>();

    public DbSet<RecoveryCodeRow> RecoveryCodes => Set<RecoveryCodeRow>();

    public DbSet<AuditRow> Audit => Set<AuditRow>();

    protected override void OnModelCreating(ModelBuilder modelBuilder)
    {
        ArgumentNullException.ThrowIfNull(modelBuilder);
        modelBuilder.Entity<EntryRow>(entry =>
        {
            entry.ToTable("entries").HasKey(row => row.Row);
            entry.Property(row => row.Row).ValueGeneratedOnAdd();
            entry.HasIndex(row => row.Id).IsUnique();
            entry.HasIndex(row => new { row.Device, row.Place }).IsUnique();
            entry.HasIndex(row => row.Sample);
        });
        modelBuilder.Entity<ChainRow>().ToTable("chains").HasKey(row => row.Device);
        modelBuilder.Entity<SealedRow>(text =>
        {
            text.ToTable("sealed_texts").HasKey(row => row.Sha256);
            text.HasIndex(row => row.Person);
        });
        modelBuilder.Entity<ErasureRow>().ToTable("erasures").HasKey(row => row.Person);
        modelBuilder.Entity<NumberRow>(number =>
        {
            number.ToTable("numbers").HasKey(row => new { row.Number, row.Sample });
            number.HasIndex(row => row.Sample);
            number.HasIndex(row => new { row.Year, row.Running });
        });
        modelBuilder.Entity<PhotographRow>().ToTable("photographs").HasKey(row => row.Sha256);
        modelBuilder.Entity<StoreRow>(store =>
        {
            store.ToTable("store").HasKey(row => row.Id);
            store.Property(row => row.Id).ValueGeneratedNever();
        });
        SearchModel.Configure(modelBuilder);
        PeopleModel.Configure(modelBuilder);
    }

    /// <summary>Moments are stored in UTC: SQLite cannot sort them otherwise, and PostgreSQL takes them no other way.</summary>
    protected override void ConfigureConventions(ModelConfigurationBuilder configurationBuilder)
    {
        ArgumentNullException.ThrowIfNull(configurationBuilder);
        configurationBuilder.Properties<DateTimeOffset>().HaveConversion<UtcConverter>();
    }

    private sealed class UtcConverter() : ValueConverter<DateTimeOffset, DateTime>(
        moment => moment.UtcDateTime,
        stored => new DateTimeOffset(DateTime.SpecifyKind(stored, DateTimeKind.Utc)));
}
