using Microsoft.EntityFrameworkCore.Migrations;

#nullable disable

namespace Abaxial.Data.Migrations.Sqlite
{
    /// <inheritdoc />
    public partial class Second : Migration
    {
        /// <inheritdoc />
        protected override void Up(MigrationBuilder migrationBuilder)
        {
            migrationBuilder.AddColumn<string>(
                name: "Receipt",
                table: "store",
                type: "TEXT",
                nullable: false,
                defaultValue: "");

            migrationBuilder.AddColumn<string>(
                name: "Receipt",
                table: "photographs",
                type: "TEXT",
                nullable: false,
                defaultValue: "");

            migrationBuilder.AddColumn<string>(
                name: "Receipt",
                table: "entries",
                type: "TEXT",
                nullable: false,
                defaultValue: "");
        }

        /// <inheritdoc />
        protected override void Down(MigrationBuilder migrationBuilder)
        {
            migrationBuilder.DropColumn(
                name: "Receipt",
                table: "store");

            migrationBuilder.DropColumn(
                name: "Receipt",
                table: "photographs");

            migrationBuilder.DropColumn(
                name: "Receipt",
                table: "entries");
        }
    }
}
