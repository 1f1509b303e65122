using Microsoft.AspNetCore.Identity;
using Microsoft.EntityFrameworkCore;

namespace Abaxial.Data.People;

/// <summary>The tables of people: accounts, what they sign in with, where they are signed in, and what was done.</summary>
internal static class PeopleModel
{
    public static void Configure(ModelBuilder model)
    {
        model.Entity<Person>(person =>
        {
            person.ToTable("people").HasKey(row => row.Id);
            person.HasIndex(row => row.NormalizedUserName).IsUnique();
            person.Property(row => row.Role).HasConversion<string>();
            person.Property(row => row.ConcurrencyStamp).IsConcurrencyToken();
            person.HasMany<IdentityUserPasskey<string>>().WithOne().HasForeignKey(row => row.UserId).OnDelete(DeleteBehavior.Cascade);
            person.HasMany<SessionRow>().WithOne().HasForeignKey(row => row.Person).OnDelete(DeleteBehavior.Cascade);
            person.HasMany<DeviceRow>().WithOne().HasForeignKey(row => row.Person).OnDelete(DeleteBehavior.Cascade);
            person.HasMany<OneTimeCodeRow>().WithOne().HasForeignKey(row => row.Person).OnDelete(DeleteBehavior.Cascade);
            person.HasMany<RecoveryCodeRow>().WithOne().HasForeignKey(row => row.Person).OnDelete(DeleteBehavior.Cascade);
        });
        model.Entity<IdentityUserPasskey<string>>(passkey =>
        {
            passkey.ToTable("passkeys").HasKey(row => row.CredentialId);
            passkey.Property(row => row.CredentialId).HasMaxLength(1024);
            passkey.OwnsOne(row => row.Data).ToJson();
        });
        model.Entity<SessionRow>().ToTable("sessions").HasKey(row => row.Id);
        model.Entity<DeviceRow>(device =>
        {
            device.ToTable("devices").HasKey(row => row.Id);
            device.HasIndex(row => row.TokenHash).IsUnique();
            device.Property(row => row.Role).HasConversion<string>();
        });
        model.Entity<BenchRow>(bench =>
        {
            bench.ToTable("benches").HasKey(row => row.Id);
            bench.HasIndex(row => row.SecretHash).IsUnique();
        });
        model.Entity<OneTimeCodeRow>(code =>
        {
            code.ToTable("one_time_codes").HasKey(row => row.Id);
            code.Property(row => row.Role).HasConversion<string>();
        });
        model.Entity<RecoveryCodeRow>().ToTable("recovery_codes").HasKey(row => row.Id);
        model.Entity<AuditRow>(audit =>
        {
            audit.ToTable("audit").HasKey(row => row.Place);
            audit.Property(row => row.Place).ValueGeneratedNever();
        });
    }
}
